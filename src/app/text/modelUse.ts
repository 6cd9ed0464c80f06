/** Captions of what is done with a model: a file, a new job, the open job amended. */
export const useModelText = {
  counts: (tubes: string, clusters: string, assumed: number) =>
    `${tubes}, ${clusters}${assumed > 0 ? `; ${assumed} of them assumed` : ''}.`,
  still: (todo: string) => ` Still to do: ${todo}.`,
  todo: {
    source: 'say where its numbers come from',
    datum: 'say where its datum is',
    setup: 'enter a way to be held',
  },
  region: 'Keep or begin',
  title: 'Keep it, or begin a job on it',
  save: 'Save the model as a file',
  newJob: 'New job on this model',
} as const;

export const amendText = {
  amend: 'Amend the open job',
  title: (job: string) => `Amend the open job: ${job}`,
  lead: 'Everything entered in the job stays. What the amendment does:',
  amended: 'model amended',
  lists: {
    clustersAdded: 'Clusters added',
    clustersGone: 'Clusters gone',
    clustersMoved: 'Clusters moved',
    tubesAdded: 'Tubes added',
    tubesGone: 'Tubes gone',
    tubesResized: 'Tubes of another size',
    tubesLengthened: 'Tubes longer or shorter',
  },
  moved: (id: string, by: string) => `${id} by ${by}`,
  lengthened: (id: string, longer: boolean, by: string) => `${id} ${longer ? 'longer' : 'shorter'} by ${by}`,
  nothing: 'No tube and no cluster changes.',
  lost: (records: string) => `${records} would name what the truss no longer has:`,
  lostOne: (kind: string, names: string) => `${kind} of ${names}`,
  keep: 'Keep them; they will show as odd',
} as const;
