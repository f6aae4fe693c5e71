delete from comparison where name = :name
