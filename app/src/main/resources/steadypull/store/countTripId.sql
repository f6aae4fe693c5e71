select count(*) from trip where id = :id
