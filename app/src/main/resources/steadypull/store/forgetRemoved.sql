update trip set removed = 2 where id = :id and removed = 1
