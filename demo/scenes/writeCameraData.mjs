import { execFile } from 'node:child_process';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** Writes what a camera would have written into a JPEG, in place. The camera is invented. */
export async function writeCameraData(file, shot) {
  const taken = shot.taken.replaceAll('-', ':').replace('T', ' ');
  const tags = {
    Make: 'Ostrel',
    Model: 'PM-2',
    Software: 'PM-2 1.08',
    SerialNumber: 'PM2-004417',
    ModifyDate: taken,
    DateTimeOriginal: taken,
    CreateDate: taken,
    OffsetTimeOriginal: shot.zone ?? '+02:00',
    ExposureTime: shot.exposure[0],
    FNumber: shot.exposure[1],
    ISO: shot.exposure[2],
    FocalLength: 5.6,
    FocalLengthIn35mmFormat: 52,
    'Orientation#': 1,
    ...position(shot.position),
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
