import { cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { partsOf } from '../../src/drawing/partsOf.ts';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../../src/knowledge/readKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { type Piece, piece } from '../../src/piece/piece.ts';
import { type Examples, loadExamples } from '../../src/server/loadExamples.ts';
import { plateList } from './plateList.ts';
import { platePicture } from './platePicture.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Small pictures stand for the large ones: what is checked does not depend on their size. */
describe('the plates of the worked examples', () => {
  let folder: string;
  let examples: Examples;
  let pieces: Piece[];
  let knowledge: Knowledge;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'plates-'));
    await cp(join(root, 'examples'), folder, { recursive: true });
    for (const plate of plateList)
      await writeFile(join(folder, plate.example, plate.file), await platePicture(plate, 48, 36));
    examples = await loadExamples(folder);
    pieces = [...examples.pieces.values()].map((one) => piece.parse(one));
    const compiled = compileKnowledge(await readKnowledgeFolder(join(root, 'knowledge')));
    if (compiled.knowledge === undefined) throw new Error('The knowledge has faults.');
    knowledge = compiled.knowledge;
  }, 120_000);
  afterAll(() => rm(folder, { recursive: true, force: true }));

  it('are all there, eight to an example, and each picture differs', () => {
    expect(examples.missing).toEqual([]);
    expect(pieces.map((one) => Object.keys(one.photos).length)).toEqual([8, 8]);
    expect(examples.photos.size).toBe(16);
  });

  it('have no picture that no plate uses', () => {
    const named = pieces.flatMap((one) => Object.values(one.photos).map((photo) => photo.name));
    expect(plateList.map((plate) => plate.file).sort()).toEqual(named.sort());
  });

  it('say in the caption that they are drawn and the piece invented', () => {
    for (const photo of pieces.flatMap((one) => Object.values(one.photos))) {
      expect(photo.caption).toMatch(/drawn plate of an invented piece/);
      expect(photo.alternative.length).toBeGreaterThan(80);
    }
  });

  it('number their marks from 1 and name findings and parts that the piece has', () => {
    for (const one of pieces) {
      const form = knowledge.forms[one.form];
      if (form === undefined) throw new Error(`No form ${one.form}.`);
      const parts = new Set(partsOf(form, one.features).map((part) => part.id));
      for (const photo of Object.values(one.photos)) {
        expect(photo.marks.map((mark) => mark.number)).toEqual(photo.marks.map((_, i) => i + 1));
        if (photo.part !== undefined) expect(parts, photo.id).toContain(photo.part);
        for (const { finding } of photo.marks)
          if (finding !== undefined) expect(Object.keys(one.findings), photo.id).toContain(finding);
      }
    }
  });

  it('are tied to just those findings that their marks name', () => {
    for (const one of pieces)
      for (const finding of Object.values(one.findings)) {
        const marked = Object.values(one.photos)
          .filter((photo) => photo.marks.some((mark) => mark.finding === finding.id))
          .map((photo) => photo.id);
        expect(finding.photos, finding.id).toEqual(marked);
      }
  });

  it('come out the same, byte for byte, a second time', async () => {
    for (const plate of plateList.slice(0, 6)) {
      const [first, second] = [await platePicture(plate, 80, 60), await platePicture(plate, 80, 60)];
      expect(first.equals(second), plate.file).toBe(true);
    }
  }, 60_000);
});
