select taken_epoch_millis from backup
