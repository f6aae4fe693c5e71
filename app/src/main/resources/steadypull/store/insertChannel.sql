insert into channel (id, unit) values (:id, :unit) on conflict (id, unit) do nothing
