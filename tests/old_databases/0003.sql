-- A small shop as tables of version 0003 hold it (application id 0x534C4741 and WAL are set by the test).
BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0003');
CREATE TABLE attachment (
	id INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	at DATETIME NOT NULL, 
	machine_id INTEGER, 
	lot_id INTEGER, 
	trial_id INTEGER, 
	event_id INTEGER, 
	name TEXT NOT NULL, 
	mime TEXT NOT NULL, 
	size INTEGER NOT NULL, 
	note TEXT NOT NULL, 
	author TEXT NOT NULL, 
	content BLOB NOT NULL, 
	CONSTRAINT fk_attachment_machine_id FOREIGN KEY(machine_id) REFERENCES machine (id), 
	CONSTRAINT fk_attachment_lot_id FOREIGN KEY(lot_id) REFERENCES lot (id), 
	CONSTRAINT fk_attachment_trial_id FOREIGN KEY(trial_id) REFERENCES trial (id), 
	CONSTRAINT fk_attachment_event_id FOREIGN KEY(event_id) REFERENCES event (id)
);
INSERT INTO "attachment" VALUES(1,'2026-11-25 12:00:00.000000',NULL,NULL,NULL,1,'belt.png','image/png',4,'the frayed end','Kim',X'89504E47');
CREATE TABLE event (
	id INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	at DATETIME NOT NULL, 
	kind TEXT NOT NULL, 
	machine_id INTEGER, 
	lot_id INTEGER, 
	instrument_id INTEGER, 
	trial_id INTEGER, 
	detail JSON NOT NULL, 
	note TEXT NOT NULL, 
	author TEXT NOT NULL, 
	takes_back INTEGER, 
	serial INTEGER NOT NULL, 
	CONSTRAINT fk_event_machine_id FOREIGN KEY(machine_id) REFERENCES machine (id), 
	CONSTRAINT fk_event_lot_id FOREIGN KEY(lot_id) REFERENCES lot (id), 
	CONSTRAINT fk_event_instrument_id FOREIGN KEY(instrument_id) REFERENCES instrument (id), 
	CONSTRAINT fk_event_trial_id FOREIGN KEY(trial_id) REFERENCES trial (id), 
	CONSTRAINT fk_event_takes_back FOREIGN KEY(takes_back) REFERENCES event (id)
);
INSERT INTO "event" VALUES(1,'2026-11-25 12:00:00.000000','belt_changed',1,NULL,NULL,NULL,'{"axis":"x"}','frayed','Kim',NULL,4);
INSERT INTO "event" VALUES(2,'2026-11-25 13:00:00.000000','gauge_bad',NULL,NULL,1,NULL,'{}','','Kim',NULL,5);
INSERT INTO "event" VALUES(3,'2026-11-25 14:00:00.000000','belt_changed',1,NULL,NULL,NULL,'{}','it was the other machine','Kim',1,6);
CREATE TABLE instrument (
	id INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	resolution_mm DOUBLE NOT NULL, 
	u_outside_zero_mm DOUBLE NOT NULL, 
	u_inside_zero_mm DOUBLE NOT NULL, 
	u_scale_ratio DOUBLE NOT NULL, 
	sd_hand_mm DOUBLE, 
	sd_hand_dof INTEGER, 
	note TEXT NOT NULL, version INTEGER DEFAULT '1' NOT NULL, 
	CONSTRAINT pk_instrument PRIMARY KEY (id), 
	CONSTRAINT uq_instrument_name UNIQUE (name)
);
INSERT INTO "instrument" VALUES(1,'caliper 2','caliper',0.01,0.0,0.0,0.0,0.008,19,'',3);
INSERT INTO "instrument" VALUES(2,'caliper 3','caliper',0.01,0.0,0.0,0.0,NULL,NULL,'',1);
CREATE TABLE lot (
	id INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	material TEXT NOT NULL, 
	colour TEXT NOT NULL, 
	note TEXT NOT NULL, maker TEXT DEFAULT '' NOT NULL, batch TEXT DEFAULT '' NOT NULL, nominal_diameter_mm DOUBLE, claimed_tolerance_mm DOUBLE, spool_mass_g DOUBLE, version INTEGER DEFAULT '1' NOT NULL, 
	CONSTRAINT pk_lot PRIMARY KEY (id), 
	CONSTRAINT uq_lot_name UNIQUE (name)
);
INSERT INTO "lot" VALUES(1,'grey 7','PLA','grey','dry','own extruder','24/7',1.75,0.03,212.5,2);
INSERT INTO "lot" VALUES(2,'clear 1','PETG','','','','',NULL,NULL,NULL,1);
CREATE TABLE machine (
	id INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	motion TEXT NOT NULL, 
	travel_x_mm DOUBLE NOT NULL, 
	travel_y_mm DOUBLE NOT NULL, 
	travel_z_mm DOUBLE NOT NULL, 
	drives JSON NOT NULL, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, limits JSON DEFAULT '{}' NOT NULL, templates JSON DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_machine PRIMARY KEY (id), 
	CONSTRAINT uq_machine_name UNIQUE (name)
);
INSERT INTO "machine" VALUES(1,'Tall one','crossed_belt',300.0,300.0,400.0,'{"x":{"kind":"belt","teeth":20,"pitch_mm":2.0}}','by the window',2,'{"nozzle_mm":0.4}','{"settings":"{word} {value}"}');
CREATE TABLE result (
	id INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	trial_id INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	value DOUBLE NOT NULL, 
	u DOUBLE NOT NULL, 
	dof DOUBLE NOT NULL, 
	unit TEXT NOT NULL, 
	CONSTRAINT fk_result_trial_id FOREIGN KEY(trial_id) REFERENCES trial (id), 
	CONSTRAINT uq_result_trial_id UNIQUE (trial_id, name)
);
INSERT INTO "result" VALUES(1,1,'scale_x',0.9,0.1,9e999,'1');
INSERT INTO "result" VALUES(2,2,'steps_x',80.0,0.02,9e999,'steps/mm');
INSERT INTO "result" VALUES(3,3,'scale_x',0.0021,0.0004,3.7,'1');
INSERT INTO "result" VALUES(4,3,'wall_outset',0.031,0.006,3.7,'mm');
CREATE TABLE "setting" (
	id INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	machine_id INTEGER NOT NULL, 
	lot_id INTEGER, 
	name TEXT NOT NULL, 
	old DOUBLE, 
	new DOUBLE NOT NULL, 
	unit TEXT NOT NULL, 
	since DATETIME NOT NULL, 
	trial_id INTEGER, 
	verified_by INTEGER, 
	prediction JSON DEFAULT '{}' NOT NULL, 
	undoes INTEGER, 
	because TEXT DEFAULT '' NOT NULL, 
	author TEXT DEFAULT '' NOT NULL, 
	serial INTEGER DEFAULT '0' NOT NULL, 
	CONSTRAINT fk_setting_machine_id FOREIGN KEY(machine_id) REFERENCES machine (id), 
	CONSTRAINT fk_setting_lot_id FOREIGN KEY(lot_id) REFERENCES lot (id), 
	CONSTRAINT fk_setting_trial_id FOREIGN KEY(trial_id) REFERENCES trial (id), 
	CONSTRAINT fk_setting_verified_by FOREIGN KEY(verified_by) REFERENCES trial (id), 
	CONSTRAINT fk_setting_undoes FOREIGN KEY(undoes) REFERENCES setting (id)
);
INSERT INTO "setting" VALUES(1,1,NULL,'steps_x',79.5,80.0,'steps/mm','2026-11-25 09:19:26.090126',2,3,'{}',NULL,'','',2);
INSERT INTO "setting" VALUES(2,1,1,'scale_x',NULL,0.0021,'1','2026-11-25 09:19:26.094774',3,NULL,'{}',NULL,'','',3);
INSERT INTO "setting" VALUES(3,1,NULL,'steps_x',80.0,79.5,'steps/mm','2026-11-25 15:00:00.000000',NULL,NULL,'{}',1,'lost steps','Kim',7);
INSERT INTO "setting" VALUES(4,1,NULL,'steps_y',NULL,80.0,'steps/mm','2026-11-25 16:00:00.000000',NULL,NULL,'{"name":"scale_y","value":0.0,"U":0.001,"unit":"1"}',NULL,'read back','Kim',8);
CREATE TABLE shop_value (
	id INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	at DATETIME NOT NULL, 
	"key" TEXT NOT NULL, 
	value JSON NOT NULL, 
	author TEXT NOT NULL
);
INSERT INTO "shop_value" VALUES(1,'2026-11-25 11:00:00.000000','authors','{"names":["Kim"]}','Kim');
INSERT INTO "shop_value" VALUES(2,'2026-11-25 11:30:00.000000','authors','{"names":["Kim","Bo"]}','Kim');
CREATE TABLE trial (
	id INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	subject TEXT NOT NULL, 
	machine_id INTEGER, 
	lot_id INTEGER, 
	instrument_id INTEGER, 
	state TEXT NOT NULL, 
	open_as TEXT, 
	readings JSON NOT NULL, 
	conditions JSON NOT NULL, 
	verdict JSON NOT NULL, 
	method TEXT NOT NULL, 
	note TEXT NOT NULL, 
	started_at DATETIME NOT NULL, 
	kept_at DATETIME, 
	withdrawn_because TEXT NOT NULL, author TEXT DEFAULT '' NOT NULL, serial INTEGER, gives TEXT DEFAULT '' NOT NULL, 
	CONSTRAINT fk_trial_machine_id FOREIGN KEY(machine_id) REFERENCES machine (id), 
	CONSTRAINT fk_trial_lot_id FOREIGN KEY(lot_id) REFERENCES lot (id), 
	CONSTRAINT fk_trial_instrument_id FOREIGN KEY(instrument_id) REFERENCES instrument (id), 
	CONSTRAINT uq_trial_open_as UNIQUE (open_as)
);
INSERT INTO "trial" VALUES(1,'drive',1,NULL,NULL,'withdrawn',NULL,'{}','{}','[]','','','2026-11-24 08:00:00.000000','2026-11-25 09:19:26.079485','wrong belt','',1,'scale_x');
INSERT INTO "trial" VALUES(2,'drive',1,NULL,NULL,'kept',NULL,'{}','{}','[]','drive 1','','2026-11-24 09:00:00.000000','2026-11-25 09:19:26.090126','','',2,'steps_x');
INSERT INTO "trial" VALUES(3,'sizeerror',1,1,1,'kept',NULL,'{"raw":["10.05","25/64in",null],"measured_mm":[10.05,9.921875,null],"step_mm":[0.01,{"$float":"inf"},0.01]}','{"part_temperature_c":23.5,"tolerance":"m"}','[{"setting":"axis_scale","amount":0.0021,"unit":"1"}]','sizeerror 1','größer','2026-11-24 10:30:00.250000','2026-11-25 09:19:26.094774','','Bo',3,'scale_x
wall_outset');
INSERT INTO "trial" VALUES(4,'sizeerror',1,NULL,NULL,'open','sizeerror/1/','{"raw":["20.1"]}','{}','[]','','','2026-11-25 07:00:00.000000',NULL,'','',NULL,'');
CREATE TABLE used (
	id INTEGER NOT NULL, 
	trial_id INTEGER NOT NULL, 
	used_id INTEGER NOT NULL, 
	CONSTRAINT pk_used PRIMARY KEY (id), 
	CONSTRAINT fk_used_trial_id FOREIGN KEY(trial_id) REFERENCES trial (id), 
	CONSTRAINT fk_used_used_id FOREIGN KEY(used_id) REFERENCES trial (id), 
	CONSTRAINT uq_used_trial_id UNIQUE (trial_id, used_id)
);
INSERT INTO "used" VALUES(1,3,2);
CREATE INDEX ix_result_name ON result (name);
CREATE INDEX ix_used_used_id ON used (used_id);
CREATE INDEX ix_trial_machine_id ON trial (machine_id, state, kept_at, lot_id);
CREATE INDEX ix_trial_lot_id ON trial (lot_id, state, kept_at, machine_id);
CREATE INDEX ix_trial_instrument_id ON trial (instrument_id, state, kept_at);
CREATE INDEX ix_trial_serial ON trial (serial);
CREATE INDEX ix_trial_state ON trial (state, machine_id, subject, lot_id, gives, serial);
CREATE INDEX ix_setting_machine_id ON setting (machine_id, name);
CREATE INDEX ix_setting_serial ON setting (serial);
CREATE INDEX ix_event_machine_id ON event (machine_id);
CREATE INDEX ix_event_lot_id ON event (lot_id);
CREATE INDEX ix_event_instrument_id ON event (instrument_id);
CREATE INDEX ix_event_trial_id ON event (trial_id);
CREATE INDEX ix_event_serial ON event (serial);
CREATE INDEX ix_attachment_machine_id ON attachment (machine_id);
CREATE INDEX ix_attachment_lot_id ON attachment (lot_id);
CREATE INDEX ix_attachment_trial_id ON attachment (trial_id);
CREATE INDEX ix_attachment_event_id ON attachment (event_id);
CREATE INDEX ix_shop_value_key ON shop_value ("key");
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('trial',4);
INSERT INTO "sqlite_sequence" VALUES('result',4);
INSERT INTO "sqlite_sequence" VALUES('setting',4);
INSERT INTO "sqlite_sequence" VALUES('event',3);
INSERT INTO "sqlite_sequence" VALUES('attachment',1);
INSERT INTO "sqlite_sequence" VALUES('shop_value',2);
COMMIT;
