import { type Issue, issue } from '../../core/base/issue.ts';
import { LARGEST_BYTES, type Opened, readFile } from '../storage/files.ts';
import { fileText } from '../text/modelBegin.ts';
import { setDraft } from './draft.ts';

const refusal = (opened: Exclude<Opened, { readonly kind: 'text' }>): Issue =>
  opened.kind === 'tooLarge'
    ? issue('too-large', opened.name, { got: opened.bytes, most: LARGEST_BYTES }, 'choose-a-tubewright-file')
    : issue(
        'wrong-kind-of-value',
        opened.name,
        { got: fileText[opened.kind], expected: fileText.text },
        'choose-a-tubewright-file',
      );

/** The text of a file given to the bench, handed on; a file that is none or too large is refused in words. */
export const takeText = async (file: File, take: (text: string) => void): Promise<void> => {
  const opened = await readFile(file);
  if (opened.kind === 'text') take(opened.text);
  else setDraft({ refused: [refusal(opened)] });
};
