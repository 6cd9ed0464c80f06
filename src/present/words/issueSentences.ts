import { planIssueSentences } from './planIssues.ts';
import { shopIssueSentences } from './shopIssues.ts';

/**
 * Issue codes → sentences. `{name}` is a fact of the issue: a name ending in `In` is a length and is shown in the user's units,
 * `{name|length}` is one too. A test reads the sources of core and fails on a code without a row here.
 */
export const issueSentences: Readonly<Record<string, string>> = {
  'tag-rests-on-a-finding': 'This tag of {of} rests on a finding with a size or place of its own.',
  // Reading a file
  'not-json':
    'The text is no JSON at line {line}, column {column}: {got} stands where {expected} is expected.',
  'text-cut-short': 'The file ends too early, at line {line}, column {column}: {expected} is still to come.',
  'too-large': 'The file has {got} characters; {most} is the most that is read.',
  'nested-too-deep': 'The file is nested deeper than {most} levels, at line {line}.',
  'other-format': 'This file says it is {got}; {expected} is expected.',
  'version-unreadable': 'The version {got} is no version of this format.',
  'version-newer': 'The file is of version {got}, newer than {newest}, the newest this program knows.',
  'version-unknown': 'The file is of version {got}, which this program never wrote.',
  'field-missing': 'A field is missing.',
  'field-left-out': 'A field was left out: its name cannot be kept.',
  'field-differs': 'The two files differ here; {kept} was kept.',
  'text-empty': 'The text is empty.',
  'text-too-long': 'The text is too long: {most} characters are the most.',
  'wrong-count': 'There are {got} entries here; the count does not fit.',
  'wrong-kind-of-value': '{got} stands here; {expected} is expected.',
  'wrong-form': '{got} is not written as it should be.',
  'not-one-of': '{got} is none of: {expected}.',
  'unknown-name': 'The name {got} means nothing here.',
  'out-of-range': '{got} is outside what can be.',
  'number-too-large': 'A number here is too large to be read.',
  'record-set-aside':
    'Record {id} ({kind}) cannot be read. It is kept aside as it came and counts for nothing.',
  'id-twice': 'The record id {id} stands twice; {first} has it already.',
  'archive-damaged': 'The archive is damaged: not all of it can be read as it was packed.',
  'archive-too-large': 'The archive holds more than is read ({most}); it is no backup of this program.',
  'archive-without-job': 'There is no job in this archive.',
  'archive-with-several': 'There are {got} texts in this archive; one job is expected.',
  'photos-missing': 'These photos are named in the job and are not here: {ids}.',
  'photos-need-archive': '{got} photos belong to the joined job, and only an archive holds photos.',
  // Records among themselves
  'record-twice': 'Record {id} stands {times} times; it counts once.',
  'same-id-differs': 'The record id {id} stands {times} times with different contents.',
  'replaces-unknown': 'This record replaces {id}, which is not in the job.',
  'withdraws-unknown': 'This record withdraws {id}, which is not in the job.',
  'replaces-other-kind': 'A {got} replaces {id}, which is a {expected}.',
  'records-in-a-ring': 'Records replace or withdraw one another in a ring: {ids}. All of them count.',
  'several-stand': 'More than one {what} stands: {counted} counts, besides {others}.',
  'nothing-to-change': 'Nothing would change.',
  'not-standing': 'Record {id} does not stand any more.',
  'other-purpose': 'That file is a {got} file, this one a {expected} file. The two are never mixed.',
  'other-model': 'That job is on the model {got}, this one on {expected}.',
  // What was entered
  'reading-between-same-point': 'Both ends of the reading are at {cluster}.',
  'reading-needs-one-length': 'A reading has a length, or a setting and a miss: one of the two.',
  'reading-marks-mixed': 'The readings use different marks: {marks}.',
  'reading-cluster-unknown':
    'Reading {reading} names {clusters}, which the truss does not have. It is not used.',
  'reading-to-itself': 'Reading {reading} runs from {cluster} to itself. It is not used.',
  'reading-mark-incomplete': 'Reading {reading} has a mark without {missing}. It is not used.',
  'reading-without-length': 'Reading {reading} has no length. It is not used.',
  'mark-needs': 'A mark on the {mark} needs its {field}.',
  'length-not-positive': 'Setting and miss together come to {got|length}.',
  'largest-below-smallest': 'The largest diameter, {got|length}, is below the smallest, {least|length}.',
  'blow-without-direction': 'The blow has no direction.',
  'unknown-id': 'The truss has no {id}.',
  'unknown-member': 'The truss has no tube {id}.',
  'unknown-cluster': 'The truss has no cluster {cluster}{id}{ids}.',
  'unknown-bay': 'The truss has no bay {bay}.',
  'unknown-setup': 'The model has no set-up {setup}.',
  'beyond-member': '{got|length} lies beyond the end of {of}, which is {most|length} long.',
  'not-of-a-cluster': '{damage} is damage of a tube; {of} is a cluster.',
  'place-not-from-its-end': 'The place is measured from {id}, which is neither end: {ends}.',
  'deeper-than-tube': 'A dent {got|length} deep is deeper than {of} is thick: {most|length}.',
  'wider-than-tube': 'A dent {got|length} wide is wider than {of}: {most|length}.',
  'tube-not-at-cluster': '{id} does not end at {cluster}.',
  'kink-at-cluster': 'The kink of {member} is given {atIn} along, at its end. Its bend is not used.',
  'chord-longer-than-tube':
    'The bend of {member} is measured over {chordIn}; the tube is {lengthIn} long. It is not used.',
  'bend-too-deep':
    'A bend of {depthIn} in {member} is too deep for these sums: the tube is {lengthIn} long. It is not used.',
  // The model
  'duplicate-station': 'Two stations have the label {label}.',
  'duplicate-id': 'The id {id} is given twice.',
  'unknown-station': 'The model has no station {label}.',
  'bracing-makes-nothing':
    'The bracing word {word} on the {face} at {at} makes no tube: a corner is missing.',
  'omitted-names-nothing': 'The opening {id} names no tube that the pattern makes.',
  'override-names-nothing': 'A tube size is given for tubes that do not exist.',
  'wall-too-thick': '{id} has a wall of {wallIn} in a tube of {odIn}.',
  'impossible-tube': 'No tube has a diameter of {odIn} and a wall of {wallIn}.',
  'unknown-material': '{id} is of {material}, which is not known here.',
  'no-tube': '{id} has no tube size: none is given for its role, {role}.',
  'zero-length': '{id} runs between two clusters at the same place: {from} and {to}.',
  'loose-cluster': 'No tube meets at {id}.',
  'doubled-member': 'Two tubes run between the same clusters: {ids}.',
  'tube-not-in-stock': 'A tube of {odIn} with a wall of {wallIn} is not in the list of stock sizes: {ids}.',
  'drawing-against-stations':
    'The drawing gives {drawingIn} from {from} to {to}; the stations give {modelIn}. They differ by more than {toleranceIn}.',
  'twins-differ': '{left} and {right} are opposite-hand twins and are not alike.',
  'no-twin': '{id} has no opposite-hand twin.',
  'pair-needs-both': 'One of the two is given, the other is not.',
  'no-readings': 'No distance is given that can be used.',
  // Statics
  'brace-to-itself': 'A brace runs from {cluster} to itself.',
  'moves-freely': 'Held as {heldAs}, the truss moves freely at {clusters}.',
  'nearly-a-mechanism':
    'Held as {heldAs}, the truss is so nearly free to move that its sums lose most of their digits.',
  'case-moves-freely': 'In the set-up {setup} of the load case {case} the truss moves freely.',
  'no-mass-to-balance':
    'The load case {case} is to be balanced by its own inertia, and nothing in it has weight.',
  'load-not-carried': 'In the load case {case} a load at {cluster} is put where no tube can take it.',
  'no-free-flight-sums': 'The truss cannot be balanced in free flight, so the share of load is not worked.',
  // Trammel
  'datum-too-small': 'The undamaged clusters that were read {hold} do not span a plane: {clusters}.',
  'datum-cannot-be-cross-checked':
    'The reference rests on three clusters, {clusters}, and cannot be cross-checked.',
  'strike-names-no-line': 'The struck line {topic} names no distance of the plan.',
  'hold-done-with-gate-closed':
    'The hold point {hold} is marked done, with no reason, while its gate is closed: outside {outside}; not read {notRead}; fit not seen {fitUp}.',
  'fold-fits-too':
    'The readings {hold} fit nearly as well with {cluster} mirrored in the plane of its neighbours, {moveIn} away.',
  'folds-fit-far-off':
    'The readings {hold} fit nearly as well with these clusters mirrored in the plane of their neighbours, more than 6 in off: {clusters}.',
  'damage-does-not-explain-shape':
    'The damage recorded does not explain the shape measured; bay {bay} fits worst. The sums use the bows alone.',
  ...shopIssueSentences,
  ...planIssueSentences,
  // Lengths as typed
  'no-length': 'No length is given.',
  'not-a-length': '{got} is not a length.',
  'unknown-unit': 'The unit of {got} is not known.',
  'negative-length': '{got} has a minus sign; this length has none.',
  'too-long': '{got} is longer than anything on a light aircraft: {mostIn} is the most.',
  'decimal-comma': '{got} has a comma. It could mean two things.',
  'feet-with-part': '{got} has a part of a foot.',
  'not-a-tape-fraction': 'No tape is divided into {under} parts: {got}.',
  'fraction-not-below-one': 'The fraction in {got} is one or more.',
  'inches-not-below-foot': 'The inches in {got} make a foot or more.',
  'fraction-without-inch-mark': '{got} is a fraction in a field of millimetres.',
};
