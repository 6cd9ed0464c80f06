/** Words no text of ours may say of a job (design.md, "How it speaks"). */
const banned =
  /\b(airworth\w*|safe|safely|safety|approv\w*|serviceab\w*|fit for flight|pass(?:ed|es)?|guarantee\w*|certif\w*|okay|ok)\b/gi;

/** The disclaimers and standing names in which such a word may stand, word for word. */
const allowed = [
  'Working aid. It does not approve repairs and does not release aircraft.',
  'Working aid, not an approval',
  'Ask the type-certificate holder or a design source that your authority recognises.',
];

/** Banned words that stand outside the allowed sentences, each with what stands around it. */
export const bannedIn = (text: string): readonly string[] => {
  const flat = text.replace(/\s+/g, ' ');
  const rest = allowed.reduce((left, sentence) => left.split(sentence).join(' '), flat);
  return [...rest.matchAll(banned)].map((m) => rest.slice(Math.max(0, m.index - 40), m.index + 40));
};
