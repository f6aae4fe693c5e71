update trip
set label = :label,
    note = :note,
    tags = :tags,
    fitted = :fitted,
    outside = :outside,
    outside_celsius = :outsideCelsius
where id = :id and removed = 0
