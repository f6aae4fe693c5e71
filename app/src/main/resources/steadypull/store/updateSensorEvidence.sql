update vehicle set sensor_evidence = :evidence where name = :name
