// The record of each case: what was measured of it, as the text of its record file.
import { cases } from './cases.js';
import { keep, kept, ofCase } from './kept.js';

// record keeps the record of the case at hand.
export const record = (text) => keep(ofCase('record'), text);

// beside is what stands beside the job: its record, and those of all cases of the list.
export const beside = () => ({ record: kept(ofCase('record'), ''), records: cases().there.map((c) => ({ name: c.title, text: kept('record ' + c.id, '') })).filter((r) => r.text) });
