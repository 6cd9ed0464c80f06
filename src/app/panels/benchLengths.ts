/** The lengths entered on the bench: one set for the tube, its damage, its ends and its bow. */
export type BenchLength =
  | 'od'
  | 'wall'
  | 'between'
  | 'from'
  | 'to'
  | 'depth'
  | 'around'
  | 'bow'
  | 'bowAt'
  | 'span'
  | 'odNear'
  | 'odFar';
