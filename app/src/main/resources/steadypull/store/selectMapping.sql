select mapping_file from table_mapping where header_line = :headerLine
