// Section 1: the book, on a drawing whose dimension lines hold the blanks.
import { $ } from './dom.js';
import { field, row } from './fields.js';

for (const key of ['book.height', 'book.width', 'book.thickness']) $('book').append(row(await field(key)));
