/** What is said beside a field of the model bench when its text cannot be taken. */
export const modelFieldText = {
  noLength: 'Not a length.',
  noNumber: 'This is no number.',
  tubeForm: 'Write outside diameter × wall, like 3/4 x .035.',
  tubeEmpty: 'A tube has a diameter and a wall.',
  wallTooThick: 'The wall is more than half the diameter.',
} as const;
