/** The picture in words, sentence by sentence. */
export const sceneText = {
  truss: (tubes: number, clusters: number) => `Truss of ${tubes} tubes and ${clusters} clusters`,
  nothing: 'Nothing selected',
  selected: (names: string, more: number) => `Selected: ${names}${more > 0 ? ` and ${more} more` : ''}`,
  shape: (name: string, size: string) => `${name}, ${size}`,
  moves: (factor: number) => `moves drawn ${factor} times`,
  table: 'Everything in the picture is in the table',
} as const;
