insert into table_mapping (header_line, mapping_file) values (:headerLine, :mapping)
on conflict (header_line) do update set mapping_file = excluded.mapping_file
