import { serviceLifeDescription } from '@/lib/wording/service-life';
import { defineCalculation } from '../calculation';
import { checkServiceLife, serviceLifeInput, serviceLifeOutput } from './schema';
import { serviceLife } from './serviceLife';

const booked = ['09:00', '11:00', '14:00'].map((at) => ({ case: `tomorrow ${at}` }));

export const serviceLifeCalculation = defineCalculation({
  name: 'service-life',
  ...serviceLifeDescription,
  input: serviceLifeInput,
  output: serviceLifeOutput,
  example: {
    things: [
      { thing: 'Pilot bit 2.5, mark 0017', limitUses: 10, limitCycles: 30, uses: 8, cycles: 22, booked },
      {
        thing: 'Pilot bit 2.5, slot of two',
        pieces: 2,
        limitUses: 10,
        limitCycles: null,
        uses: 9,
        cycles: 31,
        booked,
      },
    ],
  },
  check: checkServiceLife,
  run: serviceLife,
});
