package cistern.differential;

import java.util.Arrays;
import java.util.Optional;

/** What is thought of when multiple sclerosis is suspected. */
public enum Disease {
  MS("ms", "multiple sclerosis"),
  MOGAD("mogad", "MOG antibody-associated disease"),
  NMOSD("nmosd", "neuromyelitis optica spectrum disorder"),
  NEUROSARCOIDOSIS("neurosarcoidosis", "neurosarcoidosis"),
  NEUROBORRELIOSIS("neuroborreliosis", "neuroborreliosis"),
  AUTOIMMUNE_ENCEPHALITIS("autoimmune-encephalitis", "autoimmune encephalitis"),
  NON_INFLAMMATORY("non-inflammatory", "a disease without inflammation"),
  OTHER("other", "other or unlisted"),
  NEURO_BEHCET("neuro-behcet", "neuro-Behçet"),
  ADEM("adem", "acute disseminated encephalomyelitis"),
  SLE("sle", "lupus with CNS disease"),
  SJOGREN("sjogren", "Sjögren's disease with CNS disease"),
  HIV("hiv", "HIV"),
  SSPE("sspe", "subacute sclerosing panencephalitis"),
  MENINGOENCEPHALITIS("meningoencephalitis", "meningoencephalitis"),
  VASCULAR("vascular", "vascular disease"),
  POLYRADICULONEUROPATHY("polyradiculoneuropathy", "inflammatory polyradiculoneuropathy"),
  SUSAC("susac", "Susac's syndrome"),
  INFECTION("infection", "infection"),
  BACTERIAL_INFECTION("bacterial-infection", "bacterial, tuberculous or fungal infection"),
  PARASITE("parasite", "parasitic infection"),
  LYMPHOMA("lymphoma", "lymphoma"),
  LEPTOMENINGEAL_TUMOUR("leptomeningeal-tumour", "leptomeningeal tumour"),
  SPINAL_BLOCK("spinal-block", "spinal block"),
  PARAPROTEINAEMIA("paraproteinaemia", "paraproteinaemia or myeloma"),
  SYSTEMIC_IMMUNE_ACTIVATION("systemic-immune-activation", "systemic immune activation"),
  SUBARACHNOID_HAEMORRHAGE("subarachnoid-haemorrhage", "subarachnoid haemorrhage");

  private final String code;
  private final String term;

  Disease(String code, String term) {
    this.code = code;
    this.term = term;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }

  /** The disease of a name in a file, if it is one. */
  public static Optional<Disease> parse(String code) {
    return Arrays.stream(values()).filter(d -> d.code.equals(code)).findFirst();
  }
}
