/** What a finding or a change is about. */
export type Subject =
  | 'part'
  | 'tool'
  | 'net'
  | 'connection'
  | 'step'
  | 'shot'
  | 'code'
  | 'library'
  | 'licence'
  | 'file'
  | 'setting'
  | 'build';

/** Names one thing of a build for good, such as `part:R1` or `step:wire-the-ring`. */
export type Key = `${Subject}:${string}`;
