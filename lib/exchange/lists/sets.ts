import { MUST_HAVE_WORDS } from '../../wording/configurations';
import type { ListInfo } from '../list';
import { column } from './column';

export const setsList: ListInfo = {
  kind: 'sets',
  name: 'Sets',
  rowIs: 'One physical set.',
  does: 'New codes are added as sets that are coming in: they are washed and counted before they go anywhere. Sets that are here stay as they are. Sets on loan come by their loan.',
  columns: [
    column('code', 'Set', 'code', 'Its own code: that of its configuration, a hyphen and a number.', {
      required: true,
      example: 'EXA-01',
      also: ['Set code', 'Code', 'Tray', 'Tray code', 'Tray number'],
    }),
    column(
      'configuration',
      'Configuration',
      'code',
      'The code of its configuration, which has a version in force.',
      {
        required: true,
        example: 'EXA',
        also: ['Configuration code', 'Set type', 'Tray type'],
      },
    ),
    column('place', 'Place', 'text', 'Where it is now, by the name it has under Places; empty: not stated.', {
      example: '',
      also: ['Location', 'Shelf', 'Where'],
    }),
  ],
  partialBy: null,
  bringIn: 'addSet',
  takeOut: 'readHospital',
};

const CLASSES = Object.fromEntries(
  Object.entries(MUST_HAVE_WORDS).map(([name, words]) => [name, `${name} ${words}`]),
);

export const configurationsList: ListInfo = {
  kind: 'configurations',
  name: 'Configurations',
  rowIs: 'One line of a configuration.',
  does: 'The lines of each configuration named become a draft, to be approved by a second person as always. What is in force stays in force until then.',
  columns: [
    column('configuration', 'Configuration', 'code', 'Its code: two to eight capitals or digits.', {
      required: true,
      example: 'EXA',
      also: ['Configuration code', 'Set type', 'Tray type'],
    }),
    column('name', 'Name', 'text', 'What it is called; needed where its code is new.', {
      example: 'Example set',
      also: ['Configuration name', 'Set name', 'Tray name'],
    }),
    column('layer', 'Layer', 'whole', '1 is the top layer.', { required: true, example: '1' }),
    column(
      'layerName',
      'Layer name',
      'text',
      'The same in all rows of a layer; empty: as it is, or “Layer” and its number.',
      { example: 'Instruments' },
    ),
    column('row', 'Row', 'whole', 'Where it lies in the layer.', { required: true, example: '1' }),
    column('slot', 'Slot', 'whole', 'Where it lies in the row.', {
      required: true,
      example: '1',
      also: ['Position'],
    }),
    column('item', 'Item', 'code', 'The code of the item.', {
      required: true,
      example: 'EX-35-020',
      also: ['Item code', 'Catalogue number', 'Cat no', 'Product code'],
    }),
    column('rack', 'Rack', 'code', 'The code of the rack it stands in; empty: none.'),
    column('expected', 'Expected', 'whole', 'How many there should be.', {
      required: true,
      example: '4',
      also: ['Quantity', 'Qty', 'Number'],
    }),
    column('minimum', 'Minimum', 'whole', 'With fewer it is short.', {
      required: true,
      example: '2',
      also: ['Min'],
    }),
    column('mustHaveClass', 'Must-have class', 'choice', 'How much it matters.', {
      words: CLASSES,
      required: true,
      example: '3',
    }),
    column('substitutes', 'Substitutes', 'text', 'Codes of approved substitutes, with semicolons.'),
  ],
  partialBy: null,
  bringIn: 'writeConfiguration',
  takeOut: 'readHospital',
};
