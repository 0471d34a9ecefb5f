import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { CalculationResult } from '../calculations/define.ts';
import type { Outcome } from '../ground/fault.ts';
import { ownNamesOnly } from '../knowledge/ownNamesOnly.ts';
import type { KnowledgeFile } from '../knowledge/readEntries.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import type { ReckonedCase } from '../learning/runningScore.ts';
import type { GuideOf } from '../opinion/fieldGuide.ts';
import { CannotOpen } from '../record/fault.ts';
import { clearWriting } from '../record/issuedFolder.ts';
import { openFolder } from '../record/openFolder.ts';
import { openOwnKnowledge } from '../record/ownKnowledge.ts';
import { openPhotos, photoLimits } from '../record/photos.ts';
import type { WrittenPiece } from '../record/pieceFile/writePieceFile.ts';
import type { ReadOnly } from '../record/readOnly/readOnly.ts';
import { refuseWriting } from '../record/readOnly/refuseWriting.ts';
import { openSettledLearning, type SettledLearning } from '../record/settledLearning.ts';
import { createStore } from '../record/store.ts';
import { takingTurns } from '../record/turns.ts';
import { createApp } from './app.ts';
import { askOpinion, askRevision } from './askOpinion.ts';
import { openBackups } from './backup/openBackups.ts';
import type { CalculationQuestion } from './calculationRoutes.ts';
import { openDoors } from './door/openDoors.ts';
import { type JobStep, openJobs } from './jobs.ts';
import type { LearningQuestion } from './learningWorker.ts';
import { listen } from './listen.ts';
import { loadExamples } from './loadExamples.ts';
import type { NetworkStanding } from './network/network.ts';
import type { OpinionAnswer, OpinionQuestion } from './opinionQuestion.ts';
import type { TakeOutQuestion } from './pieceFileWorker.ts';
import { settledPieces, tellingOfSettled } from './settledPieces.ts';
import { buildOfScreens, staticFiles } from './staticFiles.ts';
import { openWorkerQueue } from './workerQueue.ts';

/** What `npm start` hands over: where the record is kept, where to answer, and the folder everything was built into. */
export type StartOptions = {
  dataDir: string;
  port: number;
  distDir: string;
  /** To look at the record only. */
  readOnly?: boolean;
  /** To be open to the local network from the start. */
  network?: boolean;
  /** One address of this machine to answer at there, instead of all. */
  networkAddress?: string | undefined;
};

/** A running program, or the one sentence that says why not. */
export type Started =
  | {
      ok: true;
      address: string;
      firstPage: string;
      readOnly: ReadOnly | undefined;
      network: NetworkStanding;
      /** Why the network was not opened, where that was asked for. */
      networkFault: string | undefined;
      close: () => Promise<void>;
    }
  | { ok: false; message: string };

/** Opens the record and answers on this machine. Whatever stands in the way, nothing is changed by it. */
export async function startServer(options: StartOptions): Promise<Started> {
  try {
    return await start(options);
  } catch (error) {
    if (error instanceof CannotOpen) return { ok: false, message: error.message };
    if (['ENOSPC', 'EDQUOT'].includes((error as NodeJS.ErrnoException).code ?? ''))
      return {
        ok: false,
        message: `The disk of the folder ${options.dataDir} is full: free some space and start again. Nothing that was kept is harmed.`,
      };
    throw error;
  }
}

async function start(options: StartOptions): Promise<Started> {
  const { dataDir, port, distDir, readOnly = false } = options;
  const version = versionOf(distDir);
  const opened = openFolder(dataDir, { programVersion: version, readOnly, now: new Date() });
  const { workDir } = opened;
  const built = (name: string) => pathToFileURL(join(distDir, name));
  const shipped = {
    knowledge: ownNamesOnly(JSON.parse(readFileSync(built('knowledge.json'), 'utf8')) as Knowledge),
    files: () => JSON.parse(readFileSync(built('knowledge-files.json'), 'utf8')) as KnowledgeFile[],
  };
  const knowledgeFile = join(workDir, 'derived', 'knowledge.json');
  const handToThreads = (knowledge: Knowledge) => {
    mkdirSync(dirname(knowledgeFile), { recursive: true });
    writeFileSync(`${knowledgeFile}.new`, JSON.stringify(knowledge));
    renameSync(`${knowledgeFile}.new`, knowledgeFile);
  };
  const learnt: { learning?: SettledLearning } = {};
  const entries = openOwnKnowledge(join(dataDir, 'own-knowledge'), shipped, (knowledge) => {
    handToThreads(knowledge);
    learnt.learning?.look();
  });
  const own = { ...entries, knowledge: () => learnt.learning?.knowledge() ?? entries.knowledge() };
  const slip = own.list().fault;
  if (slip !== undefined) console.error(slip);
  const examples = await loadExamples(join(distDir, 'examples'));
  // Opinions, guides and large pictures share one line, so that no two fill the memory together.
  const heavy = takingTurns(1);
  const photos = await openPhotos(
    dataDir,
    { ...photoLimits, heicWorker: built('heicWorker.js') },
    { builtIn: examples.photos, heavy, workDir },
  );
  const store = tellingOfSettled(createStore(opened.log, examples.pieces), () => learnt.learning?.look());
  const learning = openSettledLearning(
    join(dataDir, 'own-knowledge', 'settled.json'),
    { base: entries.knowledge, settled: () => settledPieces(store) },
    handToThreads,
  );
  learnt.learning = learning;
  if (opened.readOnly === undefined) await clearWriting(dataDir);
  const parts = { store, photos, own };
  const record = opened.readOnly === undefined ? parts : refuseWriting(parts, opened.readOnly);
  const calculations = openWorkerQueue<CalculationQuestion, CalculationResult<unknown>, never>(
    built('calculationWorker.js'),
    { knowledgeFile },
  );
  const opinions = openWorkerQueue<OpinionQuestion, OpinionAnswer, JobStep>(built('opinionWorker.js'), {
    knowledgeFile,
    version,
  });
  const guides = openWorkerQueue<GuideOf, Uint8Array | undefined, never>(built('guideWorker.js'), {
    knowledgeFile,
  });
  const reckoning = openWorkerQueue<LearningQuestion, ReckonedCase[], JobStep>(
    built('learningWorker.js'),
    undefined,
  );
  for (const path of examples.missing) console.error(`A plate of a worked example is not there: ${path}`);
  const yearNow = () => new Date().getFullYear();
  const jobs = openJobs();
  const takingOut = openWorkerQueue<TakeOutQuestion, Outcome<WrittenPiece>, JobStep>(
    built('pieceFileWorker.js'),
    { knowledgeFile },
  );
  const backups = openBackups(built('backupWorker.js'), {
    dataDir,
    programVersion: version,
    jobs,
    store,
    examples: examples.pieces,
    readOnly: opened.readOnly !== undefined,
  });

  const house = createApp({
    ...record,
    readOnly: opened.readOnly,
    calculate: (question) => calculations.ask(question),
    setOpinion: askOpinion(opinions, photos, () => new Date(), heavy),
    setGuide: (of) => heavy(() => guides.ask(of)),
    makeRevision: askRevision(opinions, photos, heavy),
    learning,
    reckon: (question, onStep) => heavy(() => reckoning.ask({ ...question, yearNow: yearNow() }, onStep)),
    dataDir,
    version,
    jobs,
    backups: backups.keeper,
    pieceFiles: {
      workDir,
      takeOut: (piece, to, onStep) =>
        takingOut.ask(
          { dataDir, file: opened.file, piece, to, programVersion: version, now: new Date() },
          onStep,
        ),
    },
    screens: await staticFiles(join(distDir, 'web')),
    build: await buildOfScreens(join(distDir, 'web')),
    yearNow,
    tellFault: (error) => console.error(error),
  });
  const close = async () => {
    await Promise.all(
      [calculations, opinions, guides, backups, takingOut, reckoning].map((each) => each.close()),
    );
    opened.close();
  };
  const doors = openDoors(house, { ...options, readOnly: opened.readOnly });
  const listening = await listen(doors.home, port);
  if (!listening.ok) {
    await close();
    const [fault] = listening.faults;
    // Started twice: better than that the port is taken is to know where the first one answers.
    const isTwice = opened.readOnly?.code === 'in-use' && fault?.code === 'server.port-taken';
    return { ok: false, message: isTwice ? opened.refused : (fault?.message ?? '') };
  }
  opened.sayAddress(listening.value.address);
  const asked = options.network === true ? await doors.network.open() : undefined;
  return {
    ok: true,
    address: listening.value.address,
    readOnly: opened.readOnly,
    network: doors.network.standing(),
    networkFault: asked?.ok === false ? asked.faults[0]?.message : undefined,
    firstPage: firstPage(store.pieces(), [...examples.pieces.keys()]),
    close: async () => {
      await doors.network.close();
      await listening.value.close();
      await close();
    },
  };
}

/** Where a person begins: at a worked example while there is no piece of their own, then at their pieces. */
function firstPage(pieces: readonly string[], examples: readonly string[]): string {
  const own = pieces.some((id) => !examples.includes(id));
  const [example] = examples;
  return own || example === undefined ? '/' : `/piece/${example}/examination`;
}

/** The version of the program, as its package says. */
function versionOf(distDir: string): string {
  return JSON.parse(readFileSync(join(distDir, '..', 'package.json'), 'utf8')).version;
}
