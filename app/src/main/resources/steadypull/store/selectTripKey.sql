select trip_key from trip where id = :id
