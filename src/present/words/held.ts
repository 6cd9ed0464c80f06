import type { Model } from '../../core/job/modelSchema.ts';

/** How the truss is held, from the id that statics gives: a set-up by its name, else what that id stands for. */
export const setupWords = (model: Pick<Model, 'setups'>, id: string): string => {
  if (id === 'listed') return 'at the clusters entered';
  if (id === 'threeTwoOne') return 'nobody has said how: sums on three clusters that just hold it';
  return model.setups.find((setup) => setup.id === id)?.name ?? id;
};
