import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { equilibriumMoisture, equilibriumRange } from '../wood/equilibriumMoisture.ts';
import { defineCalculation } from './define.ts';

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

function outOfRange(path: keyof typeof equilibriumRange, value: number, unit: string, mend: string): Fault[] {
  const [from, to] = equilibriumRange[path];
  if (value >= from && value <= to) return [];
  const written = (each: number) => String(each).replace('-', '−');
  const message = `${written(value)} ${unit} lies outside what the equation holds for: ${mend}, from ${written(from)} to ${written(to)} ${unit}.`;
  return [{ code: 'wood.moisture-out-of-range', path, message }];
}
