/** What is used of a matrix of the vision library: it lives outside the page's memory and must be deleted. */
export type Mat = {
  rows: number;
  cols: number;
  data: Uint8Array;
  data32F: Float32Array;
  data32S: Int32Array;
  delete(): void;
};
export type Deletable = { delete(): void };
export type MatVector = Deletable & { size(): number; get(index: number): Mat };
type ArucoDetector = Deletable & { detectMarkers(image: Mat, corners: MatVector, ids: Mat): void };
type CharucoDetector = Deletable & {
  detectBoard(image: Mat, corners: Mat, ids: Mat, markCorners: MatVector, markIds: Mat): void;
};
export type DetectorParameters = Deletable & Record<string, number | boolean>;

/** What is used of the vision library, whose own types leave out the marks. */
export type OpenCv = {
  Mat: new (rows?: number, cols?: number, type?: number) => Mat;
  MatVector: new () => MatVector;
  Size: new (width: number, height: number) => unknown;
  CV_8UC1: number;
  CV_32S: number;
  DICT_4X4_50: number;
  matFromArray(rows: number, cols: number, type: number, values: readonly number[]): Mat;
  getPredefinedDictionary(id: number): Deletable;
  aruco_DetectorParameters: new () => DetectorParameters;
  aruco_RefineParameters: new (
    minRepDistance: number,
    errorCorrectionRate: number,
    checkAllOrders: boolean,
  ) => Deletable;
  aruco_CharucoParameters: new () => Deletable & {
    minMarkers: number;
    tryRefineMarkers: boolean;
    checkMarkers: boolean;
  };
  aruco_ArucoDetector: new (dictionary: Deletable, parameters: Deletable, refine: Deletable) => ArucoDetector;
  aruco_CharucoBoard: new (
    size: unknown,
    square: number,
    mark: number,
    dictionary: Deletable,
    ids: Mat,
  ) => Deletable;
  aruco_CharucoDetector: new (
    board: Deletable,
    charuco: Deletable,
    parameters: Deletable,
    refine: Deletable,
  ) => CharucoDetector;
};

/**
 * Waits until the vision library can be used.
 *
 * Its module has a `then` of its own that never comes to an end under `await`: neither it nor a dynamic import of it may be awaited.
 * Hence a static import where it is used, and the wrapping here.
 *
 * @param module  what `@techstark/opencv-js` exports
 */
export async function readyOpenCv(module: unknown): Promise<{ cv: OpenCv }> {
  const loading = module as Partial<OpenCv> & { onRuntimeInitialized?: () => void };
  if (loading.Mat === undefined) {
    await new Promise<void>((ready) => {
      loading.onRuntimeInitialized = ready;
    });
  }
  return { cv: loading as OpenCv };
}
