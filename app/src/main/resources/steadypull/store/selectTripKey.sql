select trip_key from trip where id = :id and removed = 0
