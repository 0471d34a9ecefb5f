import { Hono } from 'hono';
import { DamagedPiece } from '../record/damagedPiece.ts';
import type { OwnKnowledge } from '../record/ownKnowledge.ts';
import type { PhotoFolder } from '../record/photos.ts';
import type { ReadOnly } from '../record/readOnly/readOnly.ts';
import type { SettledLearning } from '../record/settledLearning.ts';
import type { RecordStore } from '../record/store.ts';
import { unreadableFile } from '../record/unreadableFile.ts';
import type { MakeRevision } from './askOpinion.ts';
import type { BackupKeeper } from './backup/backupKeeper.ts';
import { backupRoutes } from './backup/backupRoutes.ts';
import { type Calculate, calculationRoutes } from './calculationRoutes.ts';
import { knowledgeStamp } from './differenceSince.ts';
import { faultAnswer, faultsAnswer } from './faultAnswer.ts';
import { fieldGuideRoutes, type SetGuide } from './fieldGuideRoutes.ts';
import { issuedRoutes } from './issuedRoutes.ts';
import type { Jobs } from './jobs.ts';
import { onlyReading } from './onlyReading.ts';
import { openRecordRoutes } from './openRecordRoutes.ts';
import type { SetOpinion } from './opinionQuestion.ts';
import { opinionRoutes } from './opinionRoutes.ts';
import { ownKnowledgeRoutes } from './ownKnowledgeRoutes.ts';
import { photoRoutes } from './photoRoutes.ts';
import { type PieceFileParts, pieceFileRoutes } from './pieceFileRoutes.ts';
import { pieceRoutes } from './pieceRoutes.ts';
import { recordRoutes } from './recordRoutes.ts';
import { scaleCardRoutes } from './scaleCardRoutes.ts';
import { type Reckon, settledRoutes } from './settledRoutes.ts';
import type { staticFiles } from './staticFiles.ts';

/** What the server leans on; tests hand in their own. */
export type ServerParts = {
  store: RecordStore;
  photos: PhotoFolder;
  /** The knowledge, the user's own entries in it. */
  own: OwnKnowledge;
  calculate: Calculate;
  /** Figures learned from settled cases, and what reckons them. */
  learning: SettledLearning;
  reckon: Reckon;
  setOpinion: SetOpinion;
  setGuide: SetGuide;
  makeRevision: MakeRevision;
  /** Why nothing can be entered, where the record is only looked at. */
  readOnly?: ReadOnly | undefined;
  /** Where signed revisions are kept, in `issued/`. */
  dataDir: string;
  /** The version of the program. */
  version: string;
  jobs: Jobs;
  backups: BackupKeeper;
  /** Where files of pieces wait, and the thread that takes a piece out. */
  pieceFiles: Pick<PieceFileParts, 'workDir' | 'takeOut'>;
  screens: Awaited<ReturnType<typeof staticFiles>>;
  /** Which build the screens are: a page of another one goes on with the knowledge it was opened with. */
  build?: string;
  yearNow: () => number;
  /** Told what went wrong inside; a person is told only that something did. */
  tellFault: (error: unknown) => void;
};

/**
 * The house behind its doors: the record, the photos, the calculations, the opinion, and the screens for all else. It is never listened to by
 * itself: `door/` says who comes in.
 */
export function createApp(parts: ServerParts): Hono {
  const { store, photos, own, calculate, setOpinion, setGuide, jobs, backups, screens, yearNow, tellFault } =
    parts;
  const app = new Hono();
  // Written out once for each state of the knowledge, not for each page that asks.
  const told = { knowledge: own.knowledge(), text: JSON.stringify(own.knowledge()) };
  const knowledgeText = () => {
    const knowledge = own.knowledge();
    if (told.knowledge !== knowledge) Object.assign(told, { knowledge, text: JSON.stringify(knowledge) });
    return told.text;
  };
  const knowledgeNow = knowledgeStamp(own.knowledge, knowledgeText);
  if (parts.readOnly !== undefined) app.use('/api/*', onlyReading(parts.readOnly));
  app.use('/api/*', async (context, next) => {
    await next();
    if (!context.res.headers.has('cache-control')) context.header('cache-control', 'no-store');
  });
  app.get('/knowledge.json', (context) =>
    context.body(knowledgeText(), 200, {
      'content-type': 'application/json',
      'cache-control': 'no-cache',
      'x-underside-build': parts.build ?? '',
    }),
  );
  app.route('/api/pieces', pieceRoutes(store, photos));
  app.route('/api/record', recordRoutes(store, backups, parts.readOnly));
  app.route('/api/photos', photoRoutes(photos));
  app.route('/api/calc', calculationRoutes(calculate, yearNow, photos));
  app.route('/api/own-knowledge/settled', settledRoutes(parts.learning, parts));
  app.route('/api/own-knowledge', ownKnowledgeRoutes(own));
  app.route('/api/backups', backupRoutes(backups));
  app.route(
    '/api',
    pieceFileRoutes({ ...parts.pieceFiles, dataDir: parts.dataDir, store, photos, own, jobs }),
  );
  app.route('/api', scaleCardRoutes());
  app.route('/api', fieldGuideRoutes(own.knowledge, setGuide));
  app.route('/api', openRecordRoutes({ store, photos, knowledge: own.knowledge, yearNow }));
  app.route('/api', opinionRoutes(store, jobs, setOpinion));
  app.route('/api', issuedRoutes({ ...parts, knowledgeNow }));
  app.all('/api/*', (context) =>
    faultAnswer(context, 404, 'server.no-such-route', 'There is nothing at this address.'),
  );
  app.get('*', screens);
  app.onError((error, context) => {
    const isRead = context.req.method === 'GET';
    const damaged = error instanceof DamagedPiece ? error : undefined;
    const unreadable = unreadableFile(damaged !== undefined && !isRead ? damaged.cause : error);
    // What was handed in says nothing of the file: the page keeps it, and hands it in again.
    if (unreadable !== undefined) return faultsAnswer(context, [unreadable], isRead ? undefined : 503);
    if (damaged !== undefined)
      return faultAnswer(context, 422, 'record.piece-damaged', damaged.message, 'piece');
    tellFault(error);
    return faultAnswer(
      context,
      500,
      'server.fault',
      'Something went wrong inside: nothing that was kept is harmed. Try again, and look at the terminal for what it says.',
    );
  });
  return app;
}
