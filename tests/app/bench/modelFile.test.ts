import { expect, it } from 'vitest';
import { useDraft } from '../../../src/app/bench/draft.ts';
import { takeText } from '../../../src/app/bench/modelFile.ts';
import { LARGEST_BYTES } from '../../../src/app/storage/files.ts';
import { issueSentence, mendSentence } from '../../../src/present/words/issues.ts';

const given = async (file: File): Promise<string | null> => {
  let text: string | null = null;
  await takeText(file, (read) => {
    text = read;
  });
  return text;
};
const said = (): string =>
  useDraft
    .getState()
    .refused.map((one) => `${one.at}: ${issueSentence(one)} ${mendSentence(one)}`)
    .join(' ');

it('a text is handed on as it is', async () => {
  expect(await given(new File(['{"format": 1}'], 'm.json'))).toBe('{"format": 1}');
});

it('an archive, a file too large and one that cannot be read are refused in words that name the file', async () => {
  const zip = new File([new Uint8Array([0x50, 0x4b, 3, 4, 0, 0])], 'backup.zip');
  expect(await given(zip)).toBeNull();
  expect(said()).toMatch(/^backup\.zip: An archive stands here; the text of a model is expected\. Choose a/);

  const large = new File(['x'], 'wall.json');
  Object.defineProperty(large, 'size', { value: LARGEST_BYTES + 1 });
  expect(await given(large)).toBeNull();
  expect(said()).toMatch(/^wall\.json: .*40000000|^wall\.json: .*40,000,000/);

  const gone = new File(['x'], 'gone.json');
  Object.defineProperty(gone, 'slice', {
    value: () => {
      throw new Error('gone');
    },
  });
  expect(await given(gone)).toBeNull();
  expect(said()).toMatch(/^gone\.json: A file that the browser cannot read stands here/);
});
