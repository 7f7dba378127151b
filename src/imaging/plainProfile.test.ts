import { expect, test } from 'vitest';
import { latin } from '../../tests/outside/pictureBytes.ts';
import { screenProfile, wideProfile } from '../../tests/outside/screenProfile.ts';
import { plainProfile } from './plainProfile.ts';

const text = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1').replaceAll('\0', '');

function tagsOf(profile: Uint8Array): Map<string, string> {
  const view = new DataView(profile.buffer, profile.byteOffset);
  return new Map(
    Array.from({ length: view.getUint32(128) }, (_, i) => {
      const at = 132 + 12 * i;
      const start = view.getUint32(at + 4);
      const data = profile.subarray(start, start + view.getUint32(at + 8));
      return [text(profile.subarray(at, at + 4)), Buffer.from(data).toString('hex')] as const;
    }),
  );
}

test('a profile of a public colour space comes back untouched', async () => {
  const wide = await wideProfile();
  expect(plainProfile(wide)).toBe(wide);
});

test('of a profile of a screen, colours stay to the last bit and everything else goes', async () => {
  const screen = await screenProfile();
  expect(text(screen)).toMatch(/Ada.*mmod/s);
  const plain = plainProfile(screen) ?? expect.fail();
  expect(text(plain)).not.toMatch(/Ada|mmod|vcgt|LNTL/);
  const before = tagsOf(screen);
  const after = tagsOf(plain);
  expect([...after.keys()].sort()).toEqual(
    ['desc', 'cprt', 'wtpt', 'chad', 'rXYZ', 'gXYZ', 'bXYZ', 'rTRC', 'gTRC', 'bTRC'].sort(),
  );
  for (const [tag, data] of after) if (tag !== 'desc' && tag !== 'cprt') expect(data).toBe(before.get(tag));
  expect(new DataView(plain.buffer).getUint32(0)).toBe(plain.length);
});

test('what was made plain is taken for public from then on', async () => {
  const plain = plainProfile(await screenProfile()) ?? expect.fail();
  expect(plainProfile(plain)).toBe(plain);
});

test('bytes that are no profile, or a profile that is cut off, give none', async () => {
  const screen = await screenProfile();
  expect(plainProfile(latin('x'.repeat(500)))).toBeNull();
  expect(plainProfile(new Uint8Array())).toBeNull();
  for (let length = 0; length < screen.length - 3; length += 5)
    expect(plainProfile(screen.slice(0, length))).toBeNull();
});
