import { firstValue } from '#core/claim.ts';
import type { Part } from '#core/part.ts';
import { type Asked, notTold } from '../askedOf.ts';
import { defineCheck } from '../defineCheck.ts';
import { isOnlyBegun } from '../hazardsThatBite.ts';
import { listed } from '../say.ts';

export const batteryNotDescribed = defineCheck({
  id: 'battery-not-described',
  title: 'A rechargeable battery is described: chemistry, protection, charging, disposal.',
  weight: 'slows',
  audience: 'builder',
  firm: true,
  words: 'English',
  why: 'Cells that look alike take different chargers, and the wrong pair burns.',
  basis: 'IEC 62133-2 and makers’ handling guides for what a user must be told; disposal after local law',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run({ build }) {
    const batteries = build.parts.filter(isRechargeable);
    const [first] = batteries;
    if (first === undefined || isOnlyBegun(build)) return;
    const isLithium = batteries.some((part) => lithium.test(part.place.quote));
    const asked = isLithium ? [chemistry, protection, charging, disposal] : [chemistry, charging, disposal];
    const lacking = [
      ...asked.filter((one) => one === chemistry && batteries.some(({ place }) => !one.words.test(place.quote))),
      ...notTold(
        asked.filter((one) => one !== chemistry),
        batteries,
        build,
      ),
    ];
    if (lacking.length === 0) return;
    const onlyDisposal = lacking.every((one) => one === disposal);
    yield {
      subjects: ['build:batteries'],
      mark: 'described',
      sides: batteries.slice(0, 5).map(({ place }) => place),
      weight: onlyDisposal ? 'tidy' : 'slows',
      message: `Of ${batteries.length === 1 ? 'the battery' : `the ${batteries.length} batteries`} neither the parts list nor the guide tells ${listed(lacking.map(({ what }) => what))}.`,
      consequence: onlyDisposal
        ? 'A builder does not learn where the battery goes when it is worn out.'
        : 'A builder may buy a cell without protection, or charge it with a charger for another kind.',
      remedy: `Write ${listed(lacking.map(({ what }) => what))} into its row or into the guide, as its data sheet gives it.`,
    };
  },
  examples: {
    passes: [
      {
        title: 'a cell of which everything is told',
        files: {
          'guide.md':
            '# Bike light\n\n## Connect the cell\n\n- Parts: BT1\n- Power: off → on\n\nPlug BT1 in. Charge it with the board’s charger to 4.2 V. Take worn cells to a collection point.\n\n## Close it\n\n- Power: on\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,"Li-ion cell 18650, with protection circuit"\n',
        },
      },
      {
        title: 'a holder, and cells that are not charged',
        files: {
          'guide.md':
            '# Bike light\n\n## Put the cells in\n\n- Parts: BT1\n- Power: off → on\n\nPush three AA cells in.\n\n## Close it\n\n- Power: on\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,"Battery holder for 3 AA"\nBT2,3,"AA cell, alkaline"\n',
        },
      },
    ],
    fails: [
      {
        title: 'a lithium cell and no word on charging',
        files: {
          'guide.md':
            '# Bike light\n\n## Connect the cell\n\n- Parts: BT1\n- Power: off → on\n\nPlug BT1 in.\n\n## Close it\n\n- Power: on\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,"LiPo cell, 500 mAh, protected"\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'how it is charged and where it goes' }],
      },
      {
        title: 'a pack of which only the voltage is told',
        files: {
          'guide.md':
            '# Rover\n\n## Connect the pack\n\n- Parts: BT1\n- Power: off → on\n\nPlug BT1 in. Charge it when it is empty. Recycle it.\n\n## Close it\n\n- Power: on\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,"Rechargeable battery pack, 7.2 V"\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'its chemistry' }],
      },
    ],
  },
});

const lithium = /\b(?:li-?ion|li-?po|lithium|lifepo4|18650|21700|14500)\b/i;
const chemistry: Asked = {
  what: 'its chemistry',
  words: /\b(?:li-?ion|li-?po|lithium|lifepo4|18650|21700|14500|nimh|ni-mh|nicd|lead[- ]acid|agm|sla|alkaline)\b/i,
};
const protection: Asked = {
  what: 'its protection against shorts and deep discharge',
  words: /\b(?:protect\w*|bms|pcm|fused?|fuses)\b/i,
};
const charging: Asked = {
  what: 'how it is charged',
  words: /\b(?:(?:re)?charg(?:e[sdr]?|ers|ing)|tp4056|4\.20? ?V)\b/i,
};
const disposal: Asked = {
  what: 'where it goes in the end',
  words: /\b(?:dispos\w*|recycl\w*|collection point|hazardous waste|household waste)\b/i,
};

const battery =
  /\b(?:li-?ion|li-?po|lithium (?:ion|polymer)|lifepo4|18650|21700|14500|nimh|ni-mh|lead[- ]acid|rechargeable)\b/i;
const notOne =
  /\b(?:holder|clip|connector|socket|charger|charging|board|module|box|case|lead|cable|coin|button|cr\d{4}|non-?rechargeable|alkaline|microcontroller)\b/i;

function isRechargeable(part: Part): boolean {
  const words = `${part.description} ${firstValue(part.value)?.text ?? ''} ${part.mpn ?? ''}`;
  return part.fitted && battery.test(words) && !notOne.test(part.description);
}
