import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readXmp } from './readXmp.ts';

const packet = (properties: string) =>
  `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">${properties}</rdf:RDF></x:xmpmeta>`;

test('properties are read from attributes and from elements, by their names without prefix', () => {
  const text = packet(
    `<rdf:Description rdf:about="" xmlns:aux="u" aux:SerialNumber="A 1" aux:Lens='50 mm'><exif:GPSLatitude>51,30N</exif:GPSLatitude></rdf:Description>`,
  );
  expect(readXmp(text)).toEqual([
    { name: 'SerialNumber', value: 'A 1' },
    { name: 'Lens', value: '50 mm' },
    { name: 'GPSLatitude', value: '51,30N' },
  ]);
});

test('items of a list belong to the property that holds the list', () => {
  const text = packet(
    '<rdf:Description><dc:creator><rdf:Seq><rdf:li>Ada</rdf:li><rdf:li>Bo</rdf:li></rdf:Seq></dc:creator></rdf:Description>',
  );
  expect(readXmp(text)).toEqual([
    { name: 'creator', value: 'Ada' },
    { name: 'creator', value: 'Bo' },
  ]);
});

test('a property that holds structures is named for each value inside it', () => {
  const text = packet(
    '<rdf:Description><mwg:Regions rdf:parseType="Resource"><mwg:RegionList><rdf:Bag><rdf:li><rdf:Description mwg:Name="Ada"/></rdf:li></rdf:Bag></mwg:RegionList></mwg:Regions></rdf:Description>',
  );
  expect(readXmp(text)).toContainEqual({ name: 'Regions', value: 'Ada' });
  expect(readXmp(text)).toContainEqual({ name: 'Name', value: 'Ada' });
});

test('an empty property gives no field', () => {
  expect(readXmp(packet('<rdf:Description><dc:creator/><dc:title>  </dc:title></rdf:Description>'))).toEqual([]);
});

test('a property after a structure does not belong to the structure', () => {
  const fields = readXmp(packet('<a:Regions><a:Name>x</a:Name></a:Regions><b:City>Y</b:City>'));
  expect(fields.filter(({ value }) => value === 'Y')).toEqual([{ name: 'City', value: 'Y' }]);
});

test('no text, however broken, stops it or makes it slow', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: fc.constantFrom('<', '>', '/', '"', '=', 'a', ':', ' '), maxLength: 300 }),
      (text) => {
        expect(Array.isArray(readXmp(text))).toBe(true);
      },
    ),
    { seed: 1, numRuns: 500 },
  );
  const started = performance.now();
  readXmp('<a '.repeat(100_000));
  readXmp(`<a ${'b="'.repeat(50_000)}>`);
  expect(performance.now() - started).toBeLessThan(2000);
});
