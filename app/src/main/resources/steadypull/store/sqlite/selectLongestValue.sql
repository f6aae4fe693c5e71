-- Table and column in their quotation marks.
select coalesce(max(octet_length(<column>)), 0) from <table>
