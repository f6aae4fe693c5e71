update trip set removed = :removed where id = :id and removed <> :removed and sealed = 1
