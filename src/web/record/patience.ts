import type { DeskEdges } from './deskState.ts';
import type { Asked } from './pieceServer.ts';

/** How long the record is waited for where this device can go on without it. */
const patienceMs = 1500;

/** Does something when the record takes long; returns how to say that it has answered. */
export function afterPatience({ later }: Pick<DeskEdges, 'later'>, act: () => void): () => void {
  const stands = { over: false };
  const callOff = later(patienceMs, () => {
    stands.over = true;
    act();
  });
  return () => {
    if (!stands.over) callOff();
    stands.over = true;
  };
}

/** The answer, or that nobody answered where none comes soon: a network may be there and carry nothing. */
export function soon<Answer>(
  asking: Promise<Asked<Answer>>,
  edges: Pick<DeskEdges, 'later'>,
): Promise<Asked<Answer>> {
  return new Promise((resolve) => {
    const answered = afterPatience(edges, () => resolve({ came: 'nothing' }));
    void asking.then((answer) => {
      answered();
      resolve(answer);
    });
  });
}
