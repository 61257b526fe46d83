-- The store as release 0.1 (schema 2) left it, with invented data. Written once, never edited: each
-- statement ends with a line of its own, so that a trigger may hold several.
create table account (
  id text not null primary key,
  name text not null unique,
  full_name text not null,
  role text not null,
  password text,
  failures bigint not null,
  locked_until bigint not null,
  is_active bigint not null,
  created_at text not null
)
--;;
create table one_time_code (
  hash text not null primary key,
  account text references account (id),
  expires_at bigint not null,
  used_at bigint
)
--;;
create table clinic_case (
  id text not null primary key,
  created_at text not null
)
--;;
create table case_version (
  case_id text not null references clinic_case (id),
  number bigint not null,
  at text not null,
  account text not null references account (id),
  step text not null,
  workup text not null,
  primary key (case_id, number)
)
--;;
create table report (
  case_id text not null references clinic_case (id),
  number bigint not null,
  case_version bigint not null,
  at text not null,
  account text not null references account (id),
  reason text not null,
  made_by text not null,
  workup text not null,
  page text not null,
  pdf bytea not null,
  hash text not null,
  primary key (case_id, number),
  foreign key (case_id, case_version) references case_version (case_id, number)
)
--;;
create table draft (
  account text not null references account (id),
  case_id text not null references clinic_case (id),
  step text not null,
  base bigint not null,
  at text not null,
  typed text not null,
  primary key (account, case_id, step)
)
--;;
create table audit (
  number bigint not null primary key,
  at text not null,
  account text not null,
  action text not null,
  subject text not null,
  digest text not null,
  hash text not null
)
--;;
create table audit_head (
  one bigint not null primary key check (one = 1),
  number bigint not null,
  hash text not null
)
--;;
create table flyway_schema_history (
  installed_rank integer not null constraint flyway_schema_history_pk primary key,
  version varchar(50),
  description varchar(200) not null,
  type varchar(20) not null,
  script varchar(1000) not null,
  checksum integer,
  installed_by varchar(100) not null,
  installed_on timestamp not null default now(),
  execution_time integer not null,
  success boolean not null
)
--;;
insert into account (id, name, full_name, role, password, failures, locked_until, is_active, created_at) values ('bb0f1798-a377-4418-bfc9-945a02770b39', 'clinician', 'Invented clinician', 'CLINICIAN', '$2a$10$B4tFQRINb3NlT8htjZvF3.Yl2wAujWy.a9vRbpYPtDUjqVVUAf7F2', 0, 0, 1, '2034-05-09T08:00:00Z')
--;;
insert into account (id, name, full_name, role, password, failures, locked_until, is_active, created_at) values ('592ad309-7d98-4a5d-a5b3-f440be1a4792', 'nurse', 'Invented nurse', 'NURSE', null, 0, 0, 0, '2034-05-09T08:00:00Z')
--;;
insert into account (id, name, full_name, role, password, failures, locked_until, is_active, created_at) values ('b54b1904-91b3-4a5d-9a17-15fff3e147a1', 'laboratory', 'Invented laboratory', 'LABORATORY', null, 0, 0, 1, '2034-05-09T08:00:00Z')
--;;
insert into account (id, name, full_name, role, password, failures, locked_until, is_active, created_at) values ('1ee88ee9-40ae-4fdf-9993-e7beb252edfc', 'auditor', 'Invented auditor', 'AUDITOR', null, 0, 0, 1, '2034-05-09T08:00:00Z')
--;;
insert into account (id, name, full_name, role, password, failures, locked_until, is_active, created_at) values ('154de301-afca-44e5-adc2-6f161bfba4ce', 'administrator', 'Invented administrator', 'ADMINISTRATOR', null, 0, 0, 1, '2034-05-09T08:00:00Z')
--;;
insert into one_time_code (hash, account, expires_at, used_at) values ('e36f3c9c582fd9ca0d9fb0ade107904227339b95a9bfec228ad5f33aeec70c6d', '154de301-afca-44e5-adc2-6f161bfba4ce', 2030817600000, null)
--;;
insert into clinic_case (id, created_at) values ('5021aa93-d791-4884-9ddd-a85caf3464c4', '2034-05-09T08:00:00Z')
--;;
insert into clinic_case (id, created_at) values ('1a7850ea-f964-43e0-b0f3-a3b34779ab7e', '2034-05-09T08:00:00Z')
--;;
insert into case_version (case_id, number, at, account, step, workup) values ('5021aa93-d791-4884-9ddd-a85caf3464c4', 1, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'begun', '{
  "workup": 1,
  "id": "typical-ms",
  "invented": true,
  "question": "First attack of optic neuritis, three periventricular lesions. Is there antibody made inside the CNS?",
  "person": { "id": "fennmoor-01", "ageYears": 31, "sex": "female" },
  "draws": {
    "csf": { "at": "2034-05-09T10:10:00+02:00", "receivedAt": "2034-05-09T10:40:00+02:00",
             "appearance": "clear", "site": "lumbar", "volumeMl": 12 },
    "serum": { "at": "2034-05-09T10:25:00+02:00" }
  },
  "results": [
    { "analyte": "albumin", "in": "csf", "value": 20.4, "unit": "mg/dL" },
    { "analyte": "albumin", "in": "serum", "value": 44, "unit": "g/L" },
    { "analyte": "igg", "in": "csf", "value": 5.6, "unit": "mg/dL" },
    { "analyte": "igg", "in": "serum", "value": 10.8, "unit": "g/L" },
    { "analyte": "kappa-flc", "in": "csf", "value": 3.9, "unit": "mg/L" },
    { "analyte": "kappa-flc", "in": "serum", "value": 13.1, "unit": "mg/L" },
    { "analyte": "leukocytes", "in": "csf", "value": 9, "unit": "/uL" },
    { "analyte": "erythrocytes", "in": "csf", "value": 3, "unit": "/uL" },
    { "analyte": "total-protein", "in": "csf", "value": 0.41, "unit": "g/L" },
    { "analyte": "glucose", "in": "csf", "value": 3.4, "unit": "mmol/L" },
    { "analyte": "glucose", "in": "serum", "value": 5.2, "unit": "mmol/L" },
    { "analyte": "lactate", "in": "csf", "value": 1.6, "unit": "mmol/L" }
  ],
  "bands": { "csfOnly": 8, "shared": 0, "serumOnly": 0, "method": "IEF", "readBy": "laboratory" },
  "context": { "immunoglobulinInfusion": "no", "plasmaExchange": "no" },
  "serology": [
    { "test": "mog-igg", "in": "serum", "result": "negative" },
    { "test": "aqp4-igg", "in": "serum", "result": "negative" }
  ],
  "evidence": {
    "noBetterExplanation": "yes", "presentation": "attack", "attacks": 1, "objectiveLesions": 1,
    "historicalAttack": "no",
    "regions": { "periventricular": "yes", "corticalJuxtacortical": "no", "infratentorial": "no",
                 "spinalCord": "yes", "opticNerve": "yes" },
    "newOrMixedEnhancingLesions": "no", "centralVeinSignSelectSix": "unknown",
    "prior": { "ms": [0.4, 0.7], "usesMri": "yes" }
  }
}
')
--;;
insert into case_version (case_id, number, at, account, step, workup) values ('1a7850ea-f964-43e0-b0f3-a3b34779ab7e', 1, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'begun', '{
  "workup": 1,
  "id": "barrier-leak",
  "invented": true,
  "question": "Unsteady gait and back pain at 58. Inflammation of the CNS?",
  "person": { "id": "fennmoor-02", "ageYears": 58, "sex": "male" },
  "draws": {
    "csf": { "at": "2034-06-02T09:00:00+02:00", "appearance": "clear", "site": "lumbar", "volumeMl": 10 },
    "serum": { "at": "2034-06-02T09:20:00+02:00" }
  },
  "results": [
    { "analyte": "albumin", "in": "csf", "value": 640, "unit": "mg/L" },
    { "analyte": "albumin", "in": "serum", "value": 41, "unit": "g/L" },
    { "analyte": "igg", "in": "csf", "value": 82, "unit": "mg/L" },
    { "analyte": "igg", "in": "serum", "value": 11.2, "unit": "g/L" },
    { "analyte": "leukocytes", "in": "csf", "value": 2, "unit": "/uL" },
    { "analyte": "total-protein", "in": "csf", "value": 880, "unit": "mg/L" }
  ],
  "bands": { "csfOnly": 0, "shared": 0, "serumOnly": 0, "method": "IEF", "readBy": "laboratory" }
}
')
--;;
insert into case_version (case_id, number, at, account, step, workup) values ('5021aa93-d791-4884-9ddd-a85caf3464c4', 2, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'bands', '{
  "workup": 1,
  "id": "typical-ms",
  "invented": true,
  "question": "First attack of optic neuritis, three periventricular lesions. Is there antibody made inside the CNS?",
  "person": { "id": "fennmoor-01", "ageYears": 31, "sex": "female" },
  "draws": {
    "csf": { "at": "2034-05-09T10:10:00+02:00", "receivedAt": "2034-05-09T10:40:00+02:00",
             "appearance": "clear", "site": "lumbar", "volumeMl": 12 },
    "serum": { "at": "2034-05-09T10:25:00+02:00" }
  },
  "results": [
    { "analyte": "albumin", "in": "csf", "value": 20.4, "unit": "mg/dL" },
    { "analyte": "albumin", "in": "serum", "value": 44, "unit": "g/L" },
    { "analyte": "igg", "in": "csf", "value": 5.6, "unit": "mg/dL" },
    { "analyte": "igg", "in": "serum", "value": 10.8, "unit": "g/L" },
    { "analyte": "kappa-flc", "in": "csf", "value": 3.9, "unit": "mg/L" },
    { "analyte": "kappa-flc", "in": "serum", "value": 13.1, "unit": "mg/L" },
    { "analyte": "leukocytes", "in": "csf", "value": 9, "unit": "/uL" },
    { "analyte": "erythrocytes", "in": "csf", "value": 3, "unit": "/uL" },
    { "analyte": "total-protein", "in": "csf", "value": 0.41, "unit": "g/L" },
    { "analyte": "glucose", "in": "csf", "value": 3.4, "unit": "mmol/L" },
    { "analyte": "glucose", "in": "serum", "value": 5.2, "unit": "mmol/L" },
    { "analyte": "lactate", "in": "csf", "value": 1.6, "unit": "mmol/L" }
  ],
  "bands": { "csfOnly": 3, "shared": 0, "serumOnly": 0, "method": "IEF", "readBy": "laboratory" },
  "context": { "immunoglobulinInfusion": "no", "plasmaExchange": "no" },
  "serology": [
    { "test": "mog-igg", "in": "serum", "result": "negative" },
    { "test": "aqp4-igg", "in": "serum", "result": "negative" }
  ],
  "evidence": {
    "noBetterExplanation": "yes", "presentation": "attack", "attacks": 1, "objectiveLesions": 1,
    "historicalAttack": "no",
    "regions": { "periventricular": "yes", "corticalJuxtacortical": "no", "infratentorial": "no",
                 "spinalCord": "yes", "opticNerve": "yes" },
    "newOrMixedEnhancingLesions": "no", "centralVeinSignSelectSix": "unknown",
    "prior": { "ms": [0.4, 0.7], "usesMri": "yes" }
  }
}
')
--;;
insert into report (case_id, number, case_version, at, account, reason, made_by, workup, page, pdf, hash) values ('5021aa93-d791-4884-9ddd-a85caf3464c4', 1, 2, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', '', 'Cistern 0.1; facts: invented; no local policy', '{
  "workup": 1,
  "id": "typical-ms",
  "invented": true,
  "question": "First attack of optic neuritis, three periventricular lesions. Is there antibody made inside the CNS?",
  "person": { "id": "fennmoor-01", "ageYears": 31, "sex": "female" },
  "draws": {
    "csf": { "at": "2034-05-09T10:10:00+02:00", "receivedAt": "2034-05-09T10:40:00+02:00",
             "appearance": "clear", "site": "lumbar", "volumeMl": 12 },
    "serum": { "at": "2034-05-09T10:25:00+02:00" }
  },
  "results": [
    { "analyte": "albumin", "in": "csf", "value": 20.4, "unit": "mg/dL" },
    { "analyte": "albumin", "in": "serum", "value": 44, "unit": "g/L" },
    { "analyte": "igg", "in": "csf", "value": 5.6, "unit": "mg/dL" },
    { "analyte": "igg", "in": "serum", "value": 10.8, "unit": "g/L" },
    { "analyte": "kappa-flc", "in": "csf", "value": 3.9, "unit": "mg/L" },
    { "analyte": "kappa-flc", "in": "serum", "value": 13.1, "unit": "mg/L" },
    { "analyte": "leukocytes", "in": "csf", "value": 9, "unit": "/uL" },
    { "analyte": "erythrocytes", "in": "csf", "value": 3, "unit": "/uL" },
    { "analyte": "total-protein", "in": "csf", "value": 0.41, "unit": "g/L" },
    { "analyte": "glucose", "in": "csf", "value": 3.4, "unit": "mmol/L" },
    { "analyte": "glucose", "in": "serum", "value": 5.2, "unit": "mmol/L" },
    { "analyte": "lactate", "in": "csf", "value": 1.6, "unit": "mmol/L" }
  ],
  "bands": { "csfOnly": 3, "shared": 0, "serumOnly": 0, "method": "IEF", "readBy": "laboratory" },
  "context": { "immunoglobulinInfusion": "no", "plasmaExchange": "no" },
  "serology": [
    { "test": "mog-igg", "in": "serum", "result": "negative" },
    { "test": "aqp4-igg", "in": "serum", "result": "negative" }
  ],
  "evidence": {
    "noBetterExplanation": "yes", "presentation": "attack", "attacks": 1, "objectiveLesions": 1,
    "historicalAttack": "no",
    "regions": { "periventricular": "yes", "corticalJuxtacortical": "no", "infratentorial": "no",
                 "spinalCord": "yes", "opticNerve": "yes" },
    "newOrMixedEnhancingLesions": "no", "centralVeinSignSelectSix": "unknown",
    "prior": { "ms": [0.4, 0.7], "usesMri": "yes" }
  }
}
', '<p>An invented page: κ, “λ”</p>', '\x255044462d312e3720696e76656e746564', 'eaf8006a645f3d8f91b4cc1ac96186638a735b99e9965d4d8ac93672dac94daf')
--;;
insert into report (case_id, number, case_version, at, account, reason, made_by, workup, page, pdf, hash) values ('5021aa93-d791-4884-9ddd-a85caf3464c4', 2, 2, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'a slip of the pen', 'Cistern 0.1; facts: invented; no local policy', '{
  "workup": 1,
  "id": "typical-ms",
  "invented": true,
  "question": "First attack of optic neuritis, three periventricular lesions. Is there antibody made inside the CNS?",
  "person": { "id": "fennmoor-01", "ageYears": 31, "sex": "female" },
  "draws": {
    "csf": { "at": "2034-05-09T10:10:00+02:00", "receivedAt": "2034-05-09T10:40:00+02:00",
             "appearance": "clear", "site": "lumbar", "volumeMl": 12 },
    "serum": { "at": "2034-05-09T10:25:00+02:00" }
  },
  "results": [
    { "analyte": "albumin", "in": "csf", "value": 20.4, "unit": "mg/dL" },
    { "analyte": "albumin", "in": "serum", "value": 44, "unit": "g/L" },
    { "analyte": "igg", "in": "csf", "value": 5.6, "unit": "mg/dL" },
    { "analyte": "igg", "in": "serum", "value": 10.8, "unit": "g/L" },
    { "analyte": "kappa-flc", "in": "csf", "value": 3.9, "unit": "mg/L" },
    { "analyte": "kappa-flc", "in": "serum", "value": 13.1, "unit": "mg/L" },
    { "analyte": "leukocytes", "in": "csf", "value": 9, "unit": "/uL" },
    { "analyte": "erythrocytes", "in": "csf", "value": 3, "unit": "/uL" },
    { "analyte": "total-protein", "in": "csf", "value": 0.41, "unit": "g/L" },
    { "analyte": "glucose", "in": "csf", "value": 3.4, "unit": "mmol/L" },
    { "analyte": "glucose", "in": "serum", "value": 5.2, "unit": "mmol/L" },
    { "analyte": "lactate", "in": "csf", "value": 1.6, "unit": "mmol/L" }
  ],
  "bands": { "csfOnly": 3, "shared": 0, "serumOnly": 0, "method": "IEF", "readBy": "laboratory" },
  "context": { "immunoglobulinInfusion": "no", "plasmaExchange": "no" },
  "serology": [
    { "test": "mog-igg", "in": "serum", "result": "negative" },
    { "test": "aqp4-igg", "in": "serum", "result": "negative" }
  ],
  "evidence": {
    "noBetterExplanation": "yes", "presentation": "attack", "attacks": 1, "objectiveLesions": 1,
    "historicalAttack": "no",
    "regions": { "periventricular": "yes", "corticalJuxtacortical": "no", "infratentorial": "no",
                 "spinalCord": "yes", "opticNerve": "yes" },
    "newOrMixedEnhancingLesions": "no", "centralVeinSignSelectSix": "unknown",
    "prior": { "ms": [0.4, 0.7], "usesMri": "yes" }
  }
}
', '<p>Another invented page</p>', '\x0001ff275c', 'c2685f9c0dc74bb9d17c4a91f7c5d9689f5befe93d0dbae9efb674dc22cf4364')
--;;
insert into draft (account, case_id, step, base, at, typed) values ('bb0f1798-a377-4418-bfc9-945a02770b39', '1a7850ea-f964-43e0-b0f3-a3b34779ab7e', 'results', 1, '2034-05-09T08:00:00Z', 'albumin.csf=21+mg%2FdL')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (1, '2034-05-09T08:00:00Z', 'the test itself', 'account-made', 'bb0f1798-a377-4418-bfc9-945a02770b39', '', 'dc6fafa21297202cd3043509ca89419c5bc956ea0a7c5bb856d77b90aec7dd8e')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (2, '2034-05-09T08:00:00Z', 'the test itself', 'account-made', '592ad309-7d98-4a5d-a5b3-f440be1a4792', '', '0eb87090b69edf5e49187e70934b4b3c1eb13f3b9a83f3134ddb63067e1bc80f')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (3, '2034-05-09T08:00:00Z', 'the test itself', 'account-made', 'b54b1904-91b3-4a5d-9a17-15fff3e147a1', '', '76b8d46811255586663a1fbf8f9110e1bc07823c9c5c6c7af7289a92eca35222')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (4, '2034-05-09T08:00:00Z', 'the test itself', 'account-made', '1ee88ee9-40ae-4fdf-9993-e7beb252edfc', '', 'ea791bcec95671dd1f7f9f971abfc589b5a8e3672c3d021ee548d935ffbd1e8d')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (5, '2034-05-09T08:00:00Z', 'the test itself', 'account-made', '154de301-afca-44e5-adc2-6f161bfba4ce', '', 'e34a8ff977e46fd5c1553d8ff8f7c208bcf847e0313199a63bf92944465ad51c')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (6, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'password-set', 'bb0f1798-a377-4418-bfc9-945a02770b39', '', 'b3a1ff30af29a7ac69f05a497065b5637ea356367028c48655fd89d272b62d12')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (7, '2034-05-09T08:00:00Z', '', 'code-made', '154de301-afca-44e5-adc2-6f161bfba4ce', '', 'a68977a03ccfc0d208af47e5120ccc44d3aba06dc5aba2920203d17f84b855ee')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (8, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'case-made', '5021aa93-d791-4884-9ddd-a85caf3464c4/version/1', 'e575ab66c252d900a7549d93144cc83e02d2f01b89c4215853bd5a446c85bfa3', '0966134073e69f92cf5b9072ee163043323ce8d17f10d964ab9a6edca9e7c6d1')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (9, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'case-made', '1a7850ea-f964-43e0-b0f3-a3b34779ab7e/version/1', '4de42aa80b27f3f7acc71e8495210e5aae4e1315022611278960471ea0ce0752', 'f86c7459a10eb859ded59b60719c9b2078ffe56cd8a78c618363a14437f635d7')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (10, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'case-changed', '5021aa93-d791-4884-9ddd-a85caf3464c4/version/2', '088308b5a363dd732e94d919a1b7afc3ce5dab49a5b8c31b66cf570a9280a21e', '60a45e07c4b3ea418478788e41142e88f3b0551d19509c80b12a6144e7a2cd58')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (11, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'report-signed', '5021aa93-d791-4884-9ddd-a85caf3464c4/report/1', 'eaf8006a645f3d8f91b4cc1ac96186638a735b99e9965d4d8ac93672dac94daf', 'd1cafc42bbff82f5428c4588e25c1e71bc892d88307526ceebf6bfedb5f872aa')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (12, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'report-signed', '5021aa93-d791-4884-9ddd-a85caf3464c4/report/2', 'c2685f9c0dc74bb9d17c4a91f7c5d9689f5befe93d0dbae9efb674dc22cf4364', 'ddf88b4ece5d791f1e4f96fe8d3d7665e217020b3e79cdfccffaac077b6a7d39')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (13, '2034-05-09T08:00:00Z', 'bb0f1798-a377-4418-bfc9-945a02770b39', 'case-read', '5021aa93-d791-4884-9ddd-a85caf3464c4', '', '5cff1bc30081e1ee574506542ee8b88983d661ffe2ee32ba22f0d66082ab80fc')
--;;
insert into audit (number, at, account, action, subject, digest, hash) values (14, '2034-05-09T08:00:00Z', '154de301-afca-44e5-adc2-6f161bfba4ce', 'account-closed', '592ad309-7d98-4a5d-a5b3-f440be1a4792', '', '07808a7945640e44d929dd931c56e9bf86c88ee219132b6f47715be13b50150b')
--;;
insert into audit_head (one, number, hash) values (1, 14, '07808a7945640e44d929dd931c56e9bf86c88ee219132b6f47715be13b50150b')
--;;
insert into flyway_schema_history (installed_rank, version, description, type, script, checksum, installed_by, installed_on, execution_time, success) values (1, '1', 'store', 'SQL', 'V1__store.sql', 131042152, 'postgres', '2034-05-09 08:00:00', 124, true)
--;;
insert into flyway_schema_history (installed_rank, version, description, type, script, checksum, installed_by, installed_on, execution_time, success) values (2, '2', 'append only', 'SQL', 'V2__append_only.sql', 1278058703, 'postgres', '2034-05-09 08:00:00', 145, true)
--;;
create function refuse_change() returns trigger language plpgsql as $$
begin
  raise exception '% is append-only', tg_table_name;
end;
$$
--;;
create trigger case_version_no_change before update or delete on case_version
for each row execute function refuse_change()
--;;
create trigger report_no_change before update or delete on report
for each row execute function refuse_change()
--;;
create trigger audit_no_change before update or delete on audit
for each row execute function refuse_change()
--;;
