import { databasePath } from '../../bootstrap/places.mjs';
import { runOnDatabase } from '../../bootstrap/prepare.mjs';
import { CannotDo, type Command } from '../command';

/** Puts the demo hospital back as it was; refuses any other database. */
export const demo: Command = {
  usage: 'reset',
  does: 'puts the demo hospital back as new; refuses a database that is not a demo',
  words: [1, 1],
  async run({ words: [act], env }) {
    if (act !== 'reset') throw new CannotDo('Usage: kitwright demo reset');
    const database = databasePath(env);
    const said = await runOnDatabase('reset-demo.ts', { database });
    return { exit: 0, lines: [`${said}.`], json: { database, said } };
  },
};
