import type { Item } from '../../catalogue/item';
import { never } from '../../identity/result';
import { drawBasket, drawContainer, drawRack } from './boxes';
import type { DrawOptions } from './compose';
import { drawBit, drawCountersink, drawTap, drawWire } from './cuttingTools';
import { drawDriver, drawGauge, drawHandle, drawLimiter } from './handledTools';
import { drawBender, drawForceps, drawGeneral, drawHolder, drawWasher } from './instruments';
import { drawPlate, type PlateDrawOptions } from './plate';
import type { Scene } from './scene';
import { drawScrew } from './screw';
import { drawSleeve } from './sleeve';

/**
 * The drawing of any catalogue item, made from its dimensions alone and to scale. What is not stated is drawn dashed and
 * said in words. Options of plates are ignored by everything else.
 */
export function drawItem(item: Item, options: DrawOptions & PlateDrawOptions = {}): Scene {
  switch (item.kind) {
    case 'plate':
      return drawPlate(item, options);
    case 'screw':
      return drawScrew(item, options);
    case 'washer':
      return drawWasher(item, options);
    case 'drillBit':
      return drawBit(item, options);
    case 'drillSleeve':
      return drawSleeve(item, options);
    case 'tap':
      return drawTap(item, options);
    case 'countersink':
      return drawCountersink(item, options);
    case 'depthGauge':
      return drawGauge(item, options);
    case 'driver':
      return drawDriver(item, options);
    case 'handle':
      return drawHandle(item, options);
    case 'torqueLimiter':
      return drawLimiter(item, options);
    case 'guideWire':
      return drawWire(item, options);
    case 'reductionForceps':
      return drawForceps(item, options);
    case 'plateBender':
      return drawBender(item, options);
    case 'holder':
      return drawHolder(item, options);
    case 'rack':
      return drawRack(item, options);
    case 'basket':
      return drawBasket(item, options);
    case 'container':
      return drawContainer(item, options);
    case 'generalInstrument':
    case 'consumable':
      return drawGeneral(item, options);
    default:
      return never(item);
  }
}
