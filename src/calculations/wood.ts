import { z } from 'zod';
import { coefficientFromShrinkage } from '../wood/coefficient.ts';
import { equilibriumMoisture, equilibriumRange } from '../wood/equilibriumMoisture.ts';
import { shrinkageAt } from '../wood/movement.ts';
import { defineCalculation, type Fault } from './define.ts';

/** `wood.moisture`: see its own fields. */
export const woodMoisture = defineCalculation({
  id: 'wood.moisture',
  answers: 'What moisture does wood come to in air of this warmth and dampness?',
  method:
    'The sorption equation of Hailwood and Horrobin with the constants of the Wood Handbook, from −1.2 to 60.1 °C and from 0 to 95 % ' +
    'relative humidity; outside that the fault wood.moisture-out-of-range. Within 0.1 of the Handbook’s table as recalled (228 cells). ' +
    'It is a middle value for all woods; sigmaPercent is the standard deviation of a single wood against it. A room’s ' +
    'humidity must have held for weeks, for boards months.',
  source:
    'Wood Handbook (FPL-GTR-190, 2010), chapter 4, equation 4-5: constants as printed by two others who agree.',
  input: z.strictObject({ temperatureC: z.number(), relativeHumidityPercent: z.number() }),
  output: z.strictObject({ moisturePercent: z.number(), sigmaPercent: z.number().optional() }),
  example: { temperatureC: 21, relativeHumidityPercent: 50 },
  run: ({ temperatureC, relativeHumidityPercent }, { knowledge }) => {
    const faults = [
      ...outOfRange('temperatureC', temperatureC, '°C', 'give the temperature of the room, in Celsius'),
      ...outOfRange(
        'relativeHumidityPercent',
        relativeHumidityPercent,
        '%',
        'give the relative humidity of the air',
      ),
    ];
    if (faults.length > 0) return { ok: false, faults };
    const moisturePercent = equilibriumMoisture(temperatureC, relativeHumidityPercent);
    const sigmaPercent = knowledge.woodMovement?.equilibriumSdPercent.value;
    return { ok: true, output: { moisturePercent, ...(sigmaPercent === undefined ? {} : { sigmaPercent }) } };
  },
});

const shrinkageFields = {
  /** Green to dry, in percent of the green width. */
  shrinkagePercent: z.number().positive().max(50),
  fibreSaturationPercent: z.number().min(15).max(40).default(30),
};

/** `wood.shrinkageAt`: see its own fields. */
export const woodShrinkageAt = defineCalculation({
  id: 'wood.shrinkageAt',
  answers: 'How much of its green width has a wood lost at this moisture?',
  method:
    'S_M = S · (F − M)/F, with S the shrinkage from green to dry and F the fiber saturation, 30 where nothing else is given; above F nothing is lost.',
  source: 'Wood Handbook (FPL-GTR-190, 2010), chapter 4.',
  needsKnowledge: false,
  input: z.strictObject({ ...shrinkageFields, moisturePercent: z.number().min(0).max(300) }),
  output: z.strictObject({ shrinkagePercent: z.number() }),
  example: { shrinkagePercent: 9.9, moisturePercent: 8, fibreSaturationPercent: 30 },
  run: ({ shrinkagePercent, fibreSaturationPercent, moisturePercent }) => ({
    ok: true,
    output: { shrinkagePercent: shrinkageAt(shrinkagePercent, fibreSaturationPercent, moisturePercent) },
  }),
});

/** `wood.coefficientFromShrinkage`: see its own fields. */
export const woodCoefficientFromShrinkage = defineCalculation({
  id: 'wood.coefficientFromShrinkage',
  answers: 'Which coefficient of movement follows from a wood’s shrinkage from green to dry?',
  method:
    'C = S / (100 F − S (F − M)), with M the moisture whose width C refers to: 10 in the Wood Handbook. Agrees to 0.00001 with 34 of ' +
    'the 37 woods whose two figures were both read; the other three carry the coefficient of a neighbor.',
  source:
    'Ours, inferred from tables 4-3 and 13-5 of the Wood Handbook (FPL-GTR-190, 2010), which print both.',
  needsKnowledge: false,
  input: z.strictObject({ ...shrinkageFields, baseMoisturePercent: z.number().min(0).max(30).default(10) }),
  output: z.strictObject({ coefficient: z.number() }),
  example: { shrinkagePercent: 7.8, fibreSaturationPercent: 30, baseMoisturePercent: 10 },
  run: ({ shrinkagePercent, fibreSaturationPercent, baseMoisturePercent }) => ({
    ok: true,
    output: {
      coefficient: coefficientFromShrinkage(shrinkagePercent, fibreSaturationPercent, baseMoisturePercent),
    },
  }),
});

function outOfRange(path: keyof typeof equilibriumRange, value: number, unit: string, mend: string): Fault[] {
  const [from, to] = equilibriumRange[path];
  if (value >= from && value <= to) return [];
  const written = (each: number) => String(each).replace('-', '−');
  const message = `${written(value)} ${unit} lies outside what the equation holds for: ${mend}, from ${written(from)} to ${written(to)} ${unit}.`;
  return [{ code: 'wood.moisture-out-of-range', path, message }];
}
