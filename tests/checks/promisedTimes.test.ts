import { describe, expect, it } from 'vitest';
import { promisedTimes } from '#checks/promisedTimes.ts';
import { judgedFrom } from './judgedFrom.ts';

async function read(front: string): Promise<[number, number][]> {
  const guide = `# Night light\n\n${front}\n\n## Fit the lamp\n\n- Time: 5 min\n\nSolder D1.\n`;
  const { build } = await judgedFrom({ 'guide.md': guide });
  return promisedTimes(build).map(({ least, most }) => [least, most]);
}

describe('the time that a guide promises', () => {
  it.each([
    ['The work takes four hours.', 210, 270],
    ['It takes about two and a half hours.', 120, 180],
    ['Three hours, and 9.58 EUR for all parts.', 150, 210],
    ['Two hours at the table.', 90, 150],
    ['Two evenings, about five hours.', 240, 360],
    ['Reckon with 4 to 5 hours.', 210, 330],
    ['You need 90 minutes to build it.', 75, 105],
    ['Less than two hours.', 0, 150],
    ['A lamp that you can build in an hour.', 30, 90],
    ['Time needed: half an hour', 15, 45],
    ['- Level: easy\n- Build time: ~2 h', 60, 180],
    ['| Time | Cost |\n| --- | --- |\n| 2 h | 5 EUR |', 90, 150],
    ['The work takes three hours, printing the case six hours more.', 150, 210],
    ['It takes five hours, two of them waiting for glue.', 270, 330],
    ['Four hours for you and one hour for a helper.', 210, 330],
    ['## Workshop\n\nThe whole build takes two hours.', 90, 150],
    ['## Time and skills\n\nTwo hours.', 90, 150],
  ])('is heard in: %s', async (front, least, most) => {
    expect(await read(front)).toEqual([[least, most]]);
  });

  it('has no end where the words leave it open', async () => {
    expect(await read('It takes at least two hours.')).toEqual([[90, Number.POSITIVE_INFINITY]]);
  });

  it.each([
    'Printing takes nine hours.',
    'It takes 24 hours to learn the light of a room.',
    'It needs two hours for the varnish.',
    'The battery lasts 20 hours.',
    'Two hours before high water.',
    'Six hours of glow on one charge.',
    'A swallowed cell burns through the gullet within two hours.',
    'One press runs the fan for 20 minutes.',
    '## Workshop\n\nInstall the compiler. This takes half an hour.',
    '## Parts\n\n- 2 m wire, two hours at the shop',
    'We spent 40 hours on the design.',
  ])('is not heard in: %s', async (front) => {
    expect(await read(front)).toEqual([]);
  });
});
