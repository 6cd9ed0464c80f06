/** Captions where none may stand, for the test of the test. */
export const Planted = ({ more }: { readonly more: number }) => (
  <section className="two words" aria-label="Said aloud here">
    Two words {more > 0 ? 'One of two' : 'One'} {`and ${more} more`} Word
  </section>
);
