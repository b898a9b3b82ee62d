/** How figures and lists are written; whoever sets the page's language sets it. */
export const writing = $state({ decimalSign: '.', and: 'and' });
