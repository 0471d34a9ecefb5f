import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';

/** The faces an opinion is set in, and no others. */
const faces = [
  'source-serif-4/400Regular/SourceSerif4_400Regular.ttf',
  'source-serif-4/400Regular_Italic/SourceSerif4_400Regular_Italic.ttf',
  'source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf',
  'source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  'source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf',
  'source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  'source-sans-3/700Bold/SourceSans3_700Bold.ttf',
];

/** The bytes of the faces, the serif first. */
export async function readFonts(): Promise<Buffer[]> {
  const require = createRequire(import.meta.url);
  return Promise.all(faces.map((face) => readFile(require.resolve(`@expo-google-fonts/${face}`))));
}
