drop table if exists backup
