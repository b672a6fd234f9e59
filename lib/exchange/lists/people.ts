import { ROLE_WORDS } from '../../people/role';
import type { ListInfo } from '../list';
import { column } from './column';

export const peopleList: ListInfo = {
  kind: 'people',
  name: 'People',
  rowIs: 'One person who works here.',
  does: 'New names are added without a password: an administrator gives each their first one. Known names get the role of the list. Nobody is made to leave.',
  columns: [
    column('name', 'Name', 'text', 'Given name first. It is what they sign in by, so it is theirs alone.', {
      required: true,
      example: 'Avery Example',
      also: ['Full name', 'Person', 'Staff name', 'Employee'],
    }),
    column('role', 'Role', 'choice', 'What they may do.', {
      words: ROLE_WORDS,
      required: true,
      example: ROLE_WORDS.technician,
      also: ['Job', 'Job title', 'Position'],
    }),
  ],
  partialBy: null,
  bringIn: 'managePeople',
  takeOut: 'readPeople',
};
