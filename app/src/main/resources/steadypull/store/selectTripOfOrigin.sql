select id from trip where origin = :origin and removed = 0
