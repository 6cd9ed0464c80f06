import { cautionsFor } from '../../present/words/cautions.ts';

/** Stands over every part of the route while a practice job is open. */
export const PracticeBanner = () => (
  <p className="banner" role="note">
    {cautionsFor('practice').map(({ text }) => text)}
  </p>
);
