import type { PictureRef } from '#core/text.ts';

/** Empty words on a photo, a file name, or a word that any picture could have. */
export function saysNothing({ alt, title, url }: PictureRef): boolean {
  if (title !== null && title.trim().length > 3) return false;
  const words = alt.trim();
  if (words === '')
    return /\.(?:jpe?g|heic|webp|png|gif)(?:[?#]|$)/i.test(url) && !/icon|logo|badge|spacer|divider/i.test(url);
  if (/\.(?:jpe?g|png|gif|webp|heic|svg)$/i.test(words)) return true;
  if (/^(?:IMG|DSC|DSCN|DSCF|PXL|P|MVIMG|Screenshot|WhatsApp Image)[-_ ]?\d[\d_ -]*$/i.test(words)) return true;
  return standIn.test(words);
}

const standIn =
  /^(?:an? )?(?:alt(?:ernative)?[ -]?(?:text|tag)|images?|img|pictures?|pics?|photos?|figures?|fig\.?|screenshots?|untitled|step|bild|foto|imagen?|description)[ #.:-]*\d*$/i;
