import type { Field } from './metadataBlock.ts';

const makes = ['Make', 'com.apple.quicktime.make', '\xa9mak'];
const models = ['Model', 'com.apple.quicktime.model', '\xa9mod'];

/** Make and model of the camera as one name, the make not said twice; null where the file names neither. */
export function cameraOf(fields: readonly Field[]): string | null {
  const make = firstOf(fields, makes);
  const model = firstOf(fields, models);
  if (model === '') return make || null;
  const firstWord = make.split(' ')[0] ?? '';
  const saysMake = firstWord !== '' && model.toLowerCase().startsWith(firstWord.toLowerCase());
  return saysMake || make === '' ? model : `${make} ${model}`;
}

function firstOf(fields: readonly Field[], names: readonly string[]): string {
  const values = names.flatMap((name) => fields.filter((field) => field.name === name).map(({ value }) => value));
  return values.map((value) => value.replaceAll('\0', '').trim()).find((value) => value !== '') ?? '';
}
