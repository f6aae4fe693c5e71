select count(*) from sqlite_master
