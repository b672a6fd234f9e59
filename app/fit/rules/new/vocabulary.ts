import type { FactUnit } from '@/lib/fit/facts';
import { FACTS, PARTICIPANTS } from '@/lib/fit/facts';
import { type Relation, relation as relations } from '@/lib/fit/rule';
import { choiceWords, factWords, RELATION_WORDS } from '@/lib/wording/fit';
import { PARTICIPANT_WORDS, TAKES_PART_WORDS } from '@/lib/wording/fit-facts';

/** What a condition of one relation can be made of, in words, for the form. */
export interface Vocabulary {
  relation: Relation;
  label: string;
  facts: {
    name: string;
    participant: string;
    label: string;
    unit: FactUnit;
    choices: { value: string; label: string }[] | null;
  }[];
  optional: { value: string; label: string }[];
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

export function vocabularies(): Vocabulary[] {
  return relations.options.map((relation) => ({
    relation,
    label: `${RELATION_WORDS[relation].name}: ${RELATION_WORDS[relation].between}`,
    facts: [...FACTS[relation].values()].map(({ name, participant, unit, choices }) => ({
      name,
      participant: capital(PARTICIPANT_WORDS[participant]?.the ?? participant),
      label: capital(factWords(relation, name)),
      unit,
      choices: choices?.map((value) => ({ value, label: choiceWords(value) })) ?? null,
    })),
    optional: Object.entries(PARTICIPANTS[relation])
      .filter(([, { optional }]) => optional)
      .map(([value]) => ({ value, label: capital(TAKES_PART_WORDS[value]?.yes ?? value) })),
  }));
}
