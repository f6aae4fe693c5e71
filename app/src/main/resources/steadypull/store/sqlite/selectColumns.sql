select sqlite_master.name, info.name
from sqlite_master
join pragma_table_info(sqlite_master.name) as info
where sqlite_master.type = 'table'
