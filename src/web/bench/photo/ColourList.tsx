import { photoColourDifference } from '../../../calculations/photoColour.ts';
import type { Knowledge } from '../../../knowledge/schema.ts';
import { told } from '../../../units/doubt.ts';
import { runHere } from '../runHere.ts';
import type { Balanced } from './colourWords.ts';
import { rgbOfLab } from './rgbOfLab.ts';

type Props = { samples: Balanced['samples']; beside: string; knowledge: Knowledge };

/** Each place with its colour, and how far it is from the one they are compared with. */
export function ColourList({ samples, beside, knowledge }: Props) {
  const first = samples.find(({ id }) => id === beside);
  return (
    <ul className="bare-list photo-list" aria-label="Colors">
      {samples.map(({ id, lab, sigma }) => {
        const apart =
          first === undefined || id === beside
            ? undefined
            : runHere(
                photoColourDifference,
                { a: first.lab, b: lab, sigmaA: first.sigma, sigmaB: sigma },
                knowledge,
              );
        return (
          <li key={id} className="row">
            <svg className="photo-swatch" aria-hidden="true">
              <rect width="100%" height="100%" fill={rgbOfLab(lab)} />
            </svg>
            <strong>{id}</strong>
            <span className="small">
              L {lab.L.toFixed(1)}, a {lab.a.toFixed(1)}, b {lab.b.toFixed(1)}
              {apart?.ok
                ? `; ${apart.output.deltaE2000.toFixed(1)} from ${beside}, give or take ${told(apart.output.sigma ?? 0).toFixed(1)}`
                : ''}
            </span>
          </li>
        );
      })}
    </ul>
  );
}
