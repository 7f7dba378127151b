import manifest from '../../package.json';

/** Version of the package. */
export const version = manifest.version;
