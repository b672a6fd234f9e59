import type { Item } from './item';

/**
 * Fields of an item that nobody has stated and that a fit rule may ask for, by their names in the item; nested ones with
 * dots. What an item of that form does not have (the pitch of no thread, the cannulation of a solid screw) is not missing.
 */
export function missingValues(item: Item): string[] {
  const missing: string[] = [];
  const need = (...fields: string[]) => {
    for (const field of fields)
      if ((item as unknown as Record<string, unknown>)[field] === null) missing.push(field);
  };
  need('material');
  switch (item.kind) {
    case 'plate':
      need('lengthUm', 'widthUm', 'thicknessUm', 'side');
      if (item.holes.some((hole) => hole.segment === 'head')) need('headWidthUm');
      for (const hole of item.holes) missing.push(...missingOfHole(hole));
      break;
    case 'screw':
      need('threadForm', 'threadUm', 'coreUm', 'head', 'headUm', 'drive', 'tip', 'lengthUm');
      if (item.head === 'threaded') need('lockingFamily', 'torqueNmm');
      if (item.screwKind === 'cancellousPartial') need('shaftUm', 'threadLengthUm');
      if (item.screwKind === 'cannulated') need('cannulationUm');
      break;
    case 'washer':
      need('innerUm', 'outerUm');
      break;
    case 'drillBit':
      need('diameterUm', 'lengthUm', 'coupling');
      break;
    case 'drillSleeve':
      item.ends.forEach((end, index) => {
        if (end.boreUm === null) missing.push(`ends.${index}.boreUm`);
        if (end.seatsOn === null) missing.push(`ends.${index}.seatsOn`);
        if (end.positions === null) missing.push(`ends.${index}.positions`);
        if (end.outerForm === 'threaded' && end.lockingFamily === null)
          missing.push(`ends.${index}.lockingFamily`);
      });
      break;
    case 'tap':
      need('threadForm', 'threadUm', 'coupling');
      break;
    case 'countersink':
      need('headUm', 'coupling');
      break;
    case 'depthGauge':
      need('fromUm', 'toUm', 'hookUm', 'forThreadsUm');
      break;
    case 'driver':
      need('drive');
      if (!item.fixedHandle) need('coupling');
      break;
    case 'handle':
      need('takes');
      break;
    case 'torqueLimiter':
      need('torqueNmm', 'takes');
      if (!item.fixedHandle) need('coupling');
      break;
    case 'guideWire':
      need('diameterUm', 'lengthUm');
      break;
    case 'plateBender':
      need('takesThicknessUm', 'takesWidthUm');
      break;
    default:
      break;
  }
  return missing;
}

function missingOfHole(hole: {
  id: string;
  holeClass: string;
  openingUm: number | null;
  lockingFamily: string | null;
}): string[] {
  const threaded = hole.holeClass === 'threaded' || hole.holeClass === 'polyaxialThreaded';
  const missing: string[] = [];
  if (!threaded && hole.openingUm === null) missing.push(`holes.${hole.id}.openingUm`);
  if ((threaded || hole.holeClass === 'twoZone') && hole.lockingFamily === null)
    missing.push(`holes.${hole.id}.lockingFamily`);
  return missing;
}
