pragma trusted_schema = off;
pragma cell_size_check = on;
pragma mmap_size = 0;
