import { materialSentences, materialsNamed } from '../../piece/protectedMaterials.ts';

/** What the law may ask of a material that these words name; nothing where they name none. */
export function ProtectedMaterials({ words }: { words: readonly string[] }) {
  return materialsNamed(words).map((material) => (
    <details key={material.id} className="caution small">
      <summary>{material.name}: the law holds in its sale, and its way over a border</summary>
      <ul>
        {materialSentences(material).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p>
        A reminder, not advice: the office named decides. Only what was read in its text is printed in the
        opinion.
      </p>
    </details>
  ));
}
