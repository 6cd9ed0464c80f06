/** What undo on the bench says of a change without a name. Apart, because the page that opens the bench loads it too. */
export const lastChangeText = 'the last change';
