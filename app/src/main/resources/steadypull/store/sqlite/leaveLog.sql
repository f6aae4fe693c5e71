pragma journal_mode = delete
