import { type ComponentType, lazy } from 'react';
import type { BenchContext } from './benchContext.ts';

/** One tool of the bench: its name, the question it settles, and its screen. */
export type BenchTool = {
  id: string;
  name: string;
  asks: string;
  Screen: ComponentType<{ context: BenchContext }>;
};

const tool = (
  id: string,
  name: string,
  asks: string,
  load: () => Promise<ComponentType<{ context: BenchContext }>>,
): BenchTool => ({ id, name, asks, Screen: lazy(async () => ({ default: await load() })) });

/** The tools, in the order they lie on the bench. */
export const benchTools: readonly BenchTool[] = [
  tool(
    'roundness',
    'Out of round',
    'Has this round top or turning shrunk across the grain as two centuries would shrink it?',
    async () => (await import('./wood/RoundnessTool.tsx')).RoundnessTool,
  ),
  tool(
    'movement',
    'Movement of wood',
    'How much does a board move across its grain, and what moisture does wood come to in this room?',
    async () => (await import('./wood/MovementTool.tsx')).MovementTool,
  ),
  tool(
    'set-size',
    'Size of the set',
    'How many pieces had the set, by the numbers on seat frames and rails that are left?',
    async () => (await import('./sets/SetSizeTool.tsx')).SetSizeTool,
  ),
  tool(
    'members',
    'Compare a set',
    'Which members of a set stand out, which go together, and were the armchairs made as armchairs?',
    async () => (await import('./sets/MembersTool.tsx')).MembersTool,
  ),
  tool(
    'wear',
    'Wear and use',
    'Where would feet, hands, backs and drawers have worn this piece, and does the wear that is there agree?',
    async () => (await import('./wear/WearTool.tsx')).WearTool,
  ),
  tool(
    'panel',
    'Panel shrinkage',
    'What should a panel, a drawer’s bottom or a round top have lost across its grain since it was made?',
    async () => (await import('./wood/PanelTool.tsx')).PanelTool,
  ),
  tool(
    'edges',
    'Chamfered back edges',
    'From where does a chamfered back edge show, and how much of an opening stays open from the side?',
    async () => (await import('./edges/EdgesTool.tsx')).EdgesTool,
  ),
  tool(
    'photo-measure',
    'Measure in a photo',
    'How long, how wide, how round is it, by a card or a known length in the picture?',
    async () => (await import('./photo/MeasureTool.tsx')).MeasureTool,
  ),
  tool(
    'grain',
    'Grain in a photo',
    'Which way does the grain run here, and how clearly?',
    async () => (await import('./photo/GrainTool.tsx')).GrainTool,
  ),
  tool(
    'grain-match',
    'Grain across a band',
    'Does the grain above a cuff, joint or patch come out below it: one piece, or two?',
    async () => (await import('./photo/GrainMatchTool.tsx')).GrainMatchTool,
  ),
  tool(
    'toolmarks',
    'Tool marks',
    'Which plane or saw left these marks, how far apart are they, and are they arcs?',
    async () => (await import('./photo/ToolmarksTool.tsx')).ToolmarksTool,
  ),
  tool(
    'twins',
    'Compare two outlines',
    'Are two legs or splats alike as a machine leaves them, or as a hand does?',
    async () => (await import('./photo/TwinsTool.tsx')).TwinsTool,
  ),
  tool(
    'colour',
    'Color',
    'How far has what light and air reached darkened against what was covered?',
    async () => (await import('./photo/ColourTool.tsx')).ColourTool,
  ),
  tool(
    'dating',
    'Date from dated features',
    'Which years do a few dated features leave, of the knowledge files or your own?',
    async () => (await import('./dating/DatingTool.tsx')).DatingTool,
  ),
  tool(
    'division',
    'Divide among heirs',
    'Who gets which piece, and who pays whom, so that each has a fair part in their own eyes?',
    async () => (await import('./division/DivisionTool.tsx')).DivisionTool,
  ),
];
