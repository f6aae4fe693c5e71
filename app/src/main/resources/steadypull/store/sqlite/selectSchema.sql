-- The index behind a primary key or a unique column has no text; the database makes it by itself.
select type, name, tbl_name, coalesce(sql, '') as text
from sqlite_master
where not (type = 'index' and sql is null)
order by type, name
