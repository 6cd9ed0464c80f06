/** Texts planted in a source without elements for the test of the test. */
const unit = 'lbf';

export const planted = (name: string) => ({
  title: 'Two words',
  note: `Force along ${name}`,
  row: `${name}, ${unit}`,
});
