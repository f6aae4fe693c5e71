insert into climb (id, name, line, length_metres, rise_metres)
values (:id, :name, :line, :lengthMetres, :riseMetres)
on conflict (id) do update
set name = excluded.name, line = excluded.line, length_metres = excluded.length_metres,
    rise_metres = excluded.rise_metres
