import { execFile } from 'node:child_process';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** Writes what a camera would have written into a JPEG, in place. The cameras of a set are invented. */
export async function writeCameraData(file, frame, cameras) {
  const taken = frame.taken.replaceAll('-', ':').replace('T', ' ');
  const tags = {
    ...cameras[frame.camera ?? 'phone'],
    ModifyDate: taken,
    DateTimeOriginal: taken,
    CreateDate: taken,
    OffsetTimeOriginal: frame.zone ?? '+02:00',
    ExposureTime: frame.exposure[0],
    FNumber: frame.exposure[1],
    ISO: frame.exposure[2],
    // A phone held upright stores the picture lying and says how to turn it.
    'Orientation#': frame.portrait ? 6 : 1,
    ...position(frame.position),
  };
  const options = Object.entries(tags).map(([tag, value]) => `-${tag}=${value}`);
  await run('exiftool', ['-q', '-overwrite_original', ...options, file]);
}

function position(place) {
  if (place === undefined) return {};
  const [latitude, longitude] = place;
  return {
    GPSLatitude: Math.abs(latitude),
    GPSLatitudeRef: latitude < 0 ? 'S' : 'N',
    GPSLongitude: Math.abs(longitude),
    GPSLongitudeRef: longitude < 0 ? 'W' : 'E',
    GPSAltitude: 3,
    'GPSAltitudeRef#': 0,
  };
}
