<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es_ES">
<context>
    <name></name>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
    <message>
        <source>About Thawline</source>
        <translation>Acerca de Thawline</translation>
    </message>
    <message>
        <source>Version {number}, with {libraries}</source>
        <translation>Versión {number}, con {libraries}</translation>
    </message>
    <message>
        <source>Licence</source>
        <translation>Licencia</translation>
    </message>
    <message>
        <source>Typeface</source>
        <translation>Tipografía</translation>
    </message>
    <message>
        <source>Calculation</source>
        <translation>Cálculo</translation>
    </message>
    <message>
        <source>System</source>
        <translation>Sistema</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Espacio</translation>
    </message>
    <message>
        <source>Backspace</source>
        <translation>Retroceso</translation>
    </message>
    <message>
        <source>Escape</source>
        <translation>Escape</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Intro</translation>
    </message>
    <message>
        <source>pain</source>
        <translation>dolor</translation>
    </message>
    <message>
        <source>Ctrl R</source>
        <translation>Ctrl R</translation>
    </message>
    <message>
        <source>You can also pause by raising your other hand.</source>
        <translation>También puede hacer una pausa levantando la otra mano.</translation>
    </message>
    <message>
        <source>A</source>
        <translation>A</translation>
    </message>
    <message>
        <source>R</source>
        <translation>R</translation>
    </message>
    <message>
        <source>Measure the chosen movements</source>
        <translation>Medir los movimientos elegidos</translation>
    </message>
    <message>
        <source>Ctrl 1 to 5</source>
        <translation>Ctrl 1 a 5</translation>
    </message>
    <message>
        <source>Measure, Exercises, Progress, Clips, Set-up</source>
        <translation>Medir, Ejercicios, Evolución, Grabaciones, Preparación</translation>
    </message>
    <message>
        <source>F10</source>
        <translation>F10</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Teclas</translation>
    </message>
    <message>
        <source>It is not a medical device.</source>
        <translation>No es un producto sanitario.</translation>
    </message>
    <message>
        <source>it cannot be written to</source>
        <translation>no se puede escribir en él</translation>
    </message>
    <message>
        <source>Thawline is already open. Look for its window.</source>
        <translation>Thawline ya está abierto. Busque su ventana.</translation>
    </message>
    <message>
        <source>Something went wrong</source>
        <translation>Algo ha fallado</translation>
    </message>
    <message>
        <source>details</source>
        <translation>detalles</translation>
    </message>
    <message>
        <source>Show details</source>
        <translation>Mostrar los detalles</translation>
    </message>
    <message>
        <source>Copy the details</source>
        <translation>Copiar los detalles</translation>
    </message>
    <message>
        <source>Continue</source>
        <translation>Continuar</translation>
    </message>
    <message>
        <source>Something went wrong inside Thawline.</source>
        <translation>Ha ocurrido un error dentro de Thawline.</translation>
    </message>
    <message>
        <source>Hide details</source>
        <translation>Ocultar los detalles</translation>
    </message>
    <message>
        <source>Everything saved so far is safe. You can continue. If it happens again, close the window and open it again.</source>
        <translation>Todo lo guardado hasta ahora está a salvo. Puede continuar. Si vuelve a ocurrir, cierre la ventana y ábrala de nuevo.</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Medir</translation>
    </message>
    <message>
        <source>Close without saving the programme?</source>
        <translation>¿Cerrar sin guardar el programa?</translation>
    </message>
    <message>
        <source>What you have changed in the exercise programme will be lost.</source>
        <translation>Se perderá lo que ha cambiado en el programa de ejercicios.</translation>
    </message>
    <message>
        <source>Close without saving</source>
        <translation>Cerrar sin guardar</translation>
    </message>
    <message>
        <source>Exercises</source>
        <translation>Ejercicios</translation>
    </message>
    <message>
        <source>Progress</source>
        <translation>Evolución</translation>
    </message>
    <message>
        <source>Clips</source>
        <translation>Grabaciones</translation>
    </message>
    <message>
        <source>Set-up</source>
        <translation>Preparación</translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Archivo</translation>
    </message>
    <message>
        <source>&amp;Settings</source>
        <translation>&amp;Ajustes</translation>
    </message>
    <message>
        <source>&amp;People and data</source>
        <translation>&amp;Personas y datos</translation>
    </message>
    <message>
        <source>Open a &amp;clip...</source>
        <translation>Abrir una &amp;grabación...</translation>
    </message>
    <message>
        <source>Open a &amp;folder of clips...</source>
        <translation>Abrir una &amp;carpeta de grabaciones...</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>&amp;Salir</translation>
    </message>
    <message>
        <source>&amp;Go to</source>
        <translation>&amp;Ir a</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ver</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Editar</translation>
    </message>
    <message>
        <source>&amp;Report for a clinic visit</source>
        <translation>&amp;Informe para la consulta</translation>
    </message>
    <message>
        <source>&amp;Undo: {words}</source>
        <translation>&amp;Deshacer: {words}</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Deshacer</translation>
    </message>
    <message>
        <source>Edit the &amp;programme</source>
        <translation>Editar el &amp;programa</translation>
    </message>
    <message>
        <source>&amp;Events: injection, flare, camera</source>
        <translation>&amp;Acontecimientos: inyección, brote, cámara</translation>
    </message>
    <message>
        <source>Text &amp;larger</source>
        <translation>Texto &amp;más grande</translation>
    </message>
    <message>
        <source>Text s&amp;maller</source>
        <translation>Texto más &amp;pequeño</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>Ay&amp;uda</translation>
    </message>
    <message>
        <source>&amp;Normal text size</source>
        <translation>Tamaño &amp;normal del texto</translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation>&amp;Teclas</translation>
    </message>
    <message>
        <source>&amp;About Thawline</source>
        <translation>&amp;Acerca de Thawline</translation>
    </message>
    <message>
        <source>Save a report</source>
        <translation>Guardar un informe</translation>
    </message>
    <message>
        <source>Saved as {file}.</source>
        <translation>Guardado como {file}.</translation>
    </message>
    <message>
        <source>Pages printed to {path}: {pages}.</source>
        <translation>Páginas impresas en {path}: {pages}.</translation>
    </message>
    <message>
        <source>Pages sent to the printer: {pages}.</source>
        <translation>Páginas enviadas a la impresora: {pages}.</translation>
    </message>
    <message>
        <source>No one has been measured yet.</source>
        <translation>Todavía no se ha medido a nadie.</translation>
    </message>
    <message>
        <source> (demo data)</source>
        <translation> (datos de ejemplo)</translation>
    </message>
    <message>
        <source>How much pain today?</source>
        <translation>¿Cuánto dolor tiene hoy?</translation>
    </message>
    <message>
        <source>Pain now</source>
        <translation>Dolor ahora</translation>
    </message>
    <message>
        <source>Pain last night</source>
        <translation>Dolor anoche</translation>
    </message>
    <message>
        <source>Worst pain since yesterday</source>
        <translation>Peor dolor desde ayer</translation>
    </message>
    <message>
        <source>Pain relief taken in the last four hours</source>
        <translation>Analgésico tomado en las últimas cuatro horas</translation>
    </message>
    <message>
        <source>One number is enough.</source>
        <translation>Basta con un número.</translation>
    </message>
    <message>
        <source>Choose a number first</source>
        <translation>Elija primero un número</translation>
    </message>
    <message>
        <source>Today&apos;s exercises</source>
        <translation>Ejercicios de hoy</translation>
    </message>
    <message>
        <source>You logged exercises in the last hour, so these results count as after exercise.</source>
        <translation>Ha anotado ejercicios en la última hora, así que estos resultados cuentan como posteriores a ellos.</translation>
    </message>
    <message>
        <source>Worst in the last 24 hours</source>
        <translation>El peor en las últimas 24 horas</translation>
    </message>
    <message>
        <source>You can skip any of these.</source>
        <translation>Puede omitir cualquiera.</translation>
    </message>
    <message>
        <source>Report for a clinic visit</source>
        <translation>Informe para la consulta</translation>
    </message>
    <message>
        <source>the last visit or event</source>
        <translation>la última visita o acontecimiento</translation>
    </message>
    <message>
        <source>a day I choose</source>
        <translation>un día que elijo</translation>
    </message>
    <message>
        <source>Show changes since this day</source>
        <translation>Mostrar los cambios desde este día</translation>
    </message>
    <message>
        <source>More pages: events, everyday tasks, what was not measured, how to read it</source>
        <translation>Más páginas: acontecimientos, tareas cotidianas, lo que no se midió, cómo leerlo</translation>
    </message>
    <message>
        <source>Show changes since</source>
        <translation>Mostrar los cambios desde</translation>
    </message>
    <message>
        <source>Question for the clinician</source>
        <translation>Pregunta para el profesional</translation>
    </message>
    <message>
        <source>Please enter the day as {day}, or leave it empty.</source>
        <translation>Escriba el día así: {day}, o déjelo en blanco.</translation>
    </message>
    <message>
        <source>Landscape page</source>
        <translation>Página horizontal</translation>
    </message>
    <message>
        <source>Save the study for this camera</source>
        <translation>Guardar el estudio para esta cámara</translation>
    </message>
    <message>
        <source>The whole report</source>
        <translation>El informe completo, en inglés</translation>
    </message>
    <message>
        <source>{movement}: {amount}° more than the goniometer.</source>
        <translation>{movement}: {amount}° más que el goniómetro.</translation>
    </message>
    <message>
        <source>{movement}: {amount}° less than the goniometer.</source>
        <translation>{movement}: {amount}° menos que el goniómetro.</translation>
    </message>
    <message>
        <source>Expected in 95 of 100: {low} to {high} ({count} pairs).</source>
        <translation>Lo esperado en 95 de 100: de {low} a {high} ({count} pares).</translation>
    </message>
    <message>
        <source>In 95 of 100 readings the difference is expected from {low} to {high}. From {count} pairs.</source>
        <translation>En 95 de cada 100 lecturas se espera una diferencia de {low} a {high}. De {count} pares.</translation>
    </message>
    <message>
        <source>Th&amp;e window, page by page</source>
        <translation>&amp;La ventana, página por página</translation>
    </message>
    <message>
        <source>&amp;Measuring at home, to print</source>
        <translation>&amp;Medir en casa, para imprimir</translation>
    </message>
    <message>
        <source>When to call a &amp;clinician</source>
        <translation>&amp;Cuándo llamar a un profesional</translation>
    </message>
    <message>
        <source>How far to &amp;trust a number</source>
        <translation>Hasta dónde &amp;fiarse de un número</translation>
    </message>
    <message>
        <source>How &amp;progress is judged</source>
        <translation>Cómo se &amp;juzga el progreso</translation>
    </message>
    <message>
        <source>What &amp;is saved, and where</source>
        <translation>Qué &amp;se guarda y dónde</translation>
    </message>
    <message>
        <source>Card &amp;for clinicians, to print</source>
        <translation>Tarjeta &amp;para profesionales, para imprimir</translation>
    </message>
    <message>
        <source>What each page is for, and what its buttons do.</source>
        <translation>Para qué sirve cada página y qué hacen sus botones.</translation>
    </message>
    <message>
        <source>Where to stand and how to move, on one sheet.</source>
        <translation>Dónde colocarse y cómo moverse, en una hoja.</translation>
    </message>
    <message>
        <source>Signs that a clinician should look at soon, or at once.</source>
        <translation>Señales que un profesional debe valorar pronto o enseguida.</translation>
    </message>
    <message>
        <source>What a range means, and which trials count.</source>
        <translation>Qué significa un intervalo y qué intentos cuentan.</translation>
    </message>
    <message>
        <source>When a difference is called a change.</source>
        <translation>Cuándo una diferencia se considera un cambio.</translation>
    </message>
    <message>
        <source>Which files there are, and how to delete them.</source>
        <translation>Qué archivos hay y cómo borrarlos.</translation>
    </message>
    <message>
        <source>A measurement within a visit, on one card.</source>
        <translation>Una medición durante la consulta, en una tarjeta.</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Volver</translation>
    </message>
    <message>
        <source>Camera against goniometer</source>
        <translation>Cámara frente a goniómetro</translation>
    </message>
    <message>
        <source>Now, at rest</source>
        <translation>Ahora, en reposo</translation>
    </message>
    <message>
        <source>Last night</source>
        <translation>Anoche</translation>
    </message>
    <message>
        <source>clips</source>
        <translation>grabaciones</translation>
    </message>
    <message>
        <source>Back to the list</source>
        <translation>Volver a la lista</translation>
    </message>
    <message>
        <source>Previous</source>
        <translation>Anterior</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Siguiente</translation>
    </message>
    <message>
        <source>Page Down</source>
        <translation>AvPág</translation>
    </message>
    <message>
        <source>Next clip</source>
        <translation>Grabación siguiente</translation>
    </message>
    <message>
        <source>movement</source>
        <translation>movimiento</translation>
    </message>
    <message>
        <source>side</source>
        <translation>lado</translation>
    </message>
    <message>
        <source>Read this clip</source>
        <translation>Leer esta grabación</translation>
    </message>
    <message>
        <source>{place} of {total}</source>
        <translation>{place} de {total}</translation>
    </message>
    <message>
        <source>Clip {place} of {total}</source>
        <translation>Grabación {place} de {total}</translation>
    </message>
    <message>
        <source>Replace the saved reading</source>
        <translation>Reemplazar la lectura guardada</translation>
    </message>
    <message>
        <source>Clip of {person}</source>
        <translation>Vídeo de {person}</translation>
    </message>
    <message>
        <source>The manifest names {person}. Choose that person on the Measure page first.</source>
        <translation>La lista en CSV nombra a {person}. Elija antes a esa persona en la página Medir.</translation>
    </message>
    <message>
        <source>Save for {person}</source>
        <translation>Guardar para {person}</translation>
    </message>
    <message>
        <source>Not read</source>
        <translation>Sin leer</translation>
    </message>
    <message>
        <source>Saved for {person}</source>
        <translation>Guardado para {person}</translation>
    </message>
    <message>
        <source>Saved.</source>
        <translation>Guardado.</translation>
    </message>
    <message>
        <source>No trials were accepted.</source>
        <translation>No se ha aceptado ningún intento.</translation>
    </message>
    <message>
        <source>Read again to see the curve</source>
        <translation>Leer otra vez para ver la curva</translation>
    </message>
    <message>
        <source>Reading...</source>
        <translation>Leyendo...</translation>
    </message>
    <message>
        <source>No reading to save</source>
        <translation>No hay lectura que guardar</translation>
    </message>
    <message>
        <source>Save for a person</source>
        <translation>Guardar para una persona</translation>
    </message>
    <message>
        <source>Choose the person on the Measure page first.</source>
        <translation>Elija antes la persona en la página Medir.</translation>
    </message>
    <message>
        <source>Not for demo data</source>
        <translation>No con datos de muestra</translation>
    </message>
    <message>
        <source>working out the time left</source>
        <translation>calculando el tiempo restante</translation>
    </message>
    <message>
        <source>less than a minute left</source>
        <translation>queda menos de un minuto</translation>
    </message>
    <message>
        <source>about a minute left</source>
        <translation>queda un minuto más o menos</translation>
    </message>
    <message>
        <source>about {minutes} minutes left</source>
        <translation>quedan unos {minutes} minutos</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Añadir</translation>
    </message>
    <message>
        <source>Clips...</source>
        <translation>Grabaciones...</translation>
    </message>
    <message>
        <source>A folder...</source>
        <translation>Una carpeta...</translation>
    </message>
    <message>
        <source>A manifest...</source>
        <translation>Una lista en CSV...</translation>
    </message>
    <message>
        <source>Table (CSV)...</source>
        <translation>Tabla (CSV)...</translation>
    </message>
    <message>
        <source>All details (JSON)...</source>
        <translation>Todos los detalles (JSON)...</translation>
    </message>
    <message>
        <source>Movement of the selected clips</source>
        <translation>Movimiento de las grabaciones seleccionadas</translation>
    </message>
    <message>
        <source>Side of the selected clips</source>
        <translation>Lado de las grabaciones seleccionadas</translation>
    </message>
    <message>
        <source>Read all</source>
        <translation>Leer todas</translation>
    </message>
    <message>
        <source>progress of reading</source>
        <translation>progreso de la lectura</translation>
    </message>
    <message>
        <source>Read 1 clip</source>
        <translation>Leer 1 grabación</translation>
    </message>
    <message>
        <source>Read {number} clips</source>
        <translation>Leer {number} grabaciones</translation>
    </message>
    <message>
        <source>Continue reading</source>
        <translation>Seguir leyendo</translation>
    </message>
    <message>
        <source>Clips that are shown</source>
        <translation>Grabaciones que se muestran</translation>
    </message>
    <message>
        <source>Order of the clips</source>
        <translation>Orden de las grabaciones</translation>
    </message>
    <message>
        <source>More clips can be added after reading</source>
        <translation>Podrá añadir más clips después de la lectura</translation>
    </message>
    <message>
        <source>Drop more clips or a folder here</source>
        <translation>Suelte aquí más grabaciones o una carpeta</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Detener</translation>
    </message>
    <message>
        <source>Reading the clips</source>
        <translation>Leyendo las grabaciones</translation>
    </message>
    <message>
        <source>Clips read: {read} of {total}, {time_left}</source>
        <translation>Grabaciones leídas: {read} de {total}, {time_left}</translation>
    </message>
    <message>
        <source>1 can be read now</source>
        <translation>1 ya se puede leer</translation>
    </message>
    <message>
        <source>{number} can be read now</source>
        <translation>{number} ya se pueden leer</translation>
    </message>
    <message>
        <source>{read} of {total} clips read</source>
        <translation>{read} de {total} grabaciones leídas</translation>
    </message>
    <message>
        <source>1 clip needs movement and side</source>
        <translation>Faltan movimiento y lado en 1 grabación</translation>
    </message>
    <message>
        <source>{number} clips need movement and side</source>
        <translation>Faltan movimiento y lado en {number} grabaciones</translation>
    </message>
    <message>
        <source>1 clip could not be read</source>
        <translation>1 grabación no se pudo leer</translation>
    </message>
    <message>
        <source>{number} clips could not be read</source>
        <translation>{number} grabaciones no se pudieron leer</translation>
    </message>
    <message>
        <source>1 clip to read</source>
        <translation>1 grabación por leer</translation>
    </message>
    <message>
        <source>{number} clips to read</source>
        <translation>{number} grabaciones por leer</translation>
    </message>
    <message>
        <source>All clips are read</source>
        <translation>Todas las grabaciones están leídas</translation>
    </message>
    <message>
        <source>Movement and side apply to the {number} selected clips.</source>
        <translation>El movimiento y el lado se aplican a las {number} grabaciones seleccionadas.</translation>
    </message>
    <message>
        <source>Clips read: {read} of {total}</source>
        <translation>Grabaciones leídas: {read} de {total}</translation>
    </message>
    <message>
        <source>Export results</source>
        <translation>Exportar resultados</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Abrir</translation>
    </message>
    <message>
        <source>Open the selected clip</source>
        <translation>Abrir la grabación seleccionada</translation>
    </message>
    <message>
        <source>Remove the selected clips from the list</source>
        <translation>Quitar de la lista las grabaciones seleccionadas</translation>
    </message>
    <message>
        <source>Open clips</source>
        <translation>Abrir grabaciones</translation>
    </message>
    <message>
        <source>Clips ({endings})</source>
        <translation>Grabaciones ({endings})</translation>
    </message>
    <message>
        <source>Open a folder of clips</source>
        <translation>Abrir una carpeta de grabaciones</translation>
    </message>
    <message>
        <source>Open a manifest</source>
        <translation>Abrir una lista en CSV</translation>
    </message>
    <message>
        <source>Manifest ({endings})</source>
        <translation>Lista en CSV ({endings})</translation>
    </message>
    <message>
        <source>Stop reading first, then add clips.</source>
        <translation>Detenga antes la lectura y añada después las grabaciones.</translation>
    </message>
    <message>
        <source>There are no clips in this folder.</source>
        <translation>No hay grabaciones en esta carpeta.</translation>
    </message>
    <message>
        <source>Results cannot be saved beside these clips. Export them here.</source>
        <translation>Los resultados no se pueden guardar junto a estas grabaciones. Expórtelos aquí.</translation>
    </message>
    <message>
        <source>Results are saved beside the clips</source>
        <translation>Los resultados se guardan junto a las grabaciones</translation>
    </message>
    <message>
        <source>Saved in {path}</source>
        <translation>Guardado en {path}</translation>
    </message>
    <message>
        <source>{saved} of {all} clips; the others have not been read.</source>
        <translation>{saved} de {all} grabaciones; las demás no se han leído.</translation>
    </message>
    <message>
        <source>Enter the day on which the clip was recorded.</source>
        <translation>Escriba el día en que se hizo la grabación.</translation>
    </message>
    <message>
        <source>Opening {clip}</source>
        <translation>Abriendo {clip}</translation>
    </message>
    <message>
        <source>From the clip {name}</source>
        <translation>De la grabación {name}</translation>
    </message>
    <message>
        <source>practice</source>
        <translation>práctica</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>medido</translation>
    </message>
    <message>
        <source>final, {range}</source>
        <translation>final, {range}</translation>
    </message>
    <message>
        <source>final, {low} to {high}</source>
        <translation>final, {low} a {high}</translation>
    </message>
    <message>
        <source>Trials measured so far are saved.</source>
        <translation>Los intentos ya medidos están guardados.</translation>
    </message>
    <message>
        <source>Other hand up: continue.</source>
        <translation>Otra mano arriba: seguir.</translation>
    </message>
    <message>
        <source>Other hand up: pause.</source>
        <translation>Otra mano arriba: pausa.</translation>
    </message>
    <message>
        <source>value held</source>
        <translation>valor mantenido</translation>
    </message>
    <message>
        <source>Rest, then begin again.</source>
        <translation>Descanse y empiece otra vez.</translation>
    </message>
    <message>
        <source>Listen for the voice.</source>
        <translation>Escuche la voz.</translation>
    </message>
    <message>
        <source>Note: {what}.</source>
        <translation>Atención: {what}.</translation>
    </message>
    <message>
        <source>frame of the clip</source>
        <translation>fotograma de la grabación</translation>
    </message>
    <message>
        <source>Play</source>
        <translation>Reproducir</translation>
    </message>
    <message>
        <source>Previous frame</source>
        <translation>Fotograma anterior</translation>
    </message>
    <message>
        <source>Next frame</source>
        <translation>Fotograma siguiente</translation>
    </message>
    <message>
        <source>Pause</source>
        <translation>Pausa</translation>
    </message>
    <message>
        <source>Frame {number} of {total}, {time} s</source>
        <translation>Imagen {number} de {total}, {time} s</translation>
    </message>
    <message>
        <source>Measure this position</source>
        <translation>Medir esta posición</translation>
    </message>
    <message>
        <source>Delete last trial</source>
        <translation>Borrar el último intento</translation>
    </message>
    <message>
        <source>Finish and save</source>
        <translation>Terminar y guardar</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Probar otra vez</translation>
    </message>
    <message>
        <source>rough value</source>
        <translation>valor aproximado</translation>
    </message>
    <message>
        <source>Save the lens profile</source>
        <translation>Guardar el perfil de la lente</translation>
    </message>
    <message>
        <source>I have the board</source>
        <translation>Ya tengo el tablero</translation>
    </message>
    <message>
        <source>Start over</source>
        <translation>Empezar de nuevo</translation>
    </message>
    <message>
        <source>Lens: print the board first.</source>
        <translation>Lente: primero imprima el tablero.</translation>
    </message>
    <message>
        <source>Hold the board in front of the camera.</source>
        <translation>Sostenga el tablero delante de la cámara.</translation>
    </message>
    <message>
        <source>Print the board at full size.</source>
        <translation>Imprima el tablero a tamaño real.</translation>
    </message>
    <message>
        <source>Show it to the camera until every field has a tick.</source>
        <translation>Muéstrelo a la cámara hasta que cada casilla tenga su marca.</translation>
    </message>
    <message>
        <source>Save the lens profile.</source>
        <translation>Guarde el perfil de la lente.</translation>
    </message>
    <message>
        <source>Show the whole printed board, or most of it, in good light.</source>
        <translation>Muestre el tablero impreso, entero o casi, con buena luz.</translation>
    </message>
    <message>
        <source>Calculating the lens profile.</source>
        <translation>Calculando el perfil de la lente.</translation>
    </message>
    <message>
        <source>Opening the camera.</source>
        <translation>Abriendo la cámara.</translation>
    </message>
    <message>
        <source>Views: {kept} of {enough}</source>
        <translation>Vistas: {kept} de {enough}</translation>
    </message>
    <message>
        <source>Me</source>
        <translation>Yo</translation>
    </message>
    <message>
        <source>Finish this session first.</source>
        <translation>Termine primero esta sesión.</translation>
    </message>
    <message>
        <source>{name} is a made-up person. Choose or add the person to be measured.</source>
        <translation>{name} es una persona inventada. Elija o añada a la persona que se va a medir.</translation>
    </message>
    <message>
        <source>Today&apos;s pain is saved.</source>
        <translation>El dolor de hoy está guardado.</translation>
    </message>
    <message>
        <source>Asked now because the pain was rated {pain} of 10.</source>
        <translation>Se pregunta ahora porque el dolor se puntuó con {pain} de 10.</translation>
    </message>
    <message>
        <source>Start</source>
        <translation>Empezar</translation>
    </message>
    <message>
        <source>Repeat the last movement</source>
        <translation>Repetir el anterior</translation>
    </message>
    <message>
        <source>Next, {here} of {of}: {task}</source>
        <translation>Siguiente, {here} de {of}: {task}</translation>
    </message>
    <message>
        <source>You rated the pain in the last movement {pain} of 10. The limit is {limit}. Let the arm rest. Start the next movement only if the pain has eased, or stop for today.</source>
        <translation>Ha puntuado el dolor del último movimiento con {pain} de 10. El límite es {limit}. Deje descansar el brazo. Empiece el siguiente movimiento solo si el dolor ha cedido, o déjelo por hoy.</translation>
    </message>
    <message>
        <source>You will not see the screen: listen for the voice and the tones.</source>
        <translation>No verá la pantalla: escuche la voz y los tonos.</translation>
    </message>
    <message>
        <source>How much did it hurt?</source>
        <translation>¿Cuánto dolió?</translation>
    </message>
    <message>
        <source>Pain in the movement</source>
        <translation>Dolor en el movimiento</translation>
    </message>
    <message>
        <source>what stopped it</source>
        <translation>qué lo detuvo</translation>
    </message>
    <message>
        <source>Repeat movement</source>
        <translation>Repetir movimiento</translation>
    </message>
    <message>
        <source>This was the last movement</source>
        <translation>Este era el último movimiento</translation>
    </message>
    <message>
        <source>Choose a number, then Finish to see the results.</source>
        <translation>Elija un número y pulse Terminar para ver los resultados.</translation>
    </message>
    <message>
        <source>Finish shows the results.</source>
        <translation>Al terminar se muestran los resultados.</translation>
    </message>
    <message>
        <source>That much pain asks for a rest. Nothing starts by itself.</source>
        <translation>Con tanto dolor conviene descansar. Nada empieza por sí solo.</translation>
    </message>
    <message>
        <source>Choose a number, then Continue.</source>
        <translation>Elija un número y pulse Continuar.</translation>
    </message>
    <message>
        <source>Press Continue when you are ready.</source>
        <translation>Pulse Continuar cuando quiera.</translation>
    </message>
    <message>
        <source>Stopped because it hurt.</source>
        <translation>Se detuvo porque dolía.</translation>
    </message>
    <message>
        <source>Choose a number, then go to your spot or Continue.</source>
        <translation>Elija un número y vaya a su sitio o pulse Continuar.</translation>
    </message>
    <message>
        <source>Press Continue, or go to your spot.</source>
        <translation>Pulse Continuar o vaya a su sitio.</translation>
    </message>
    <message>
        <source>{question}, {pain} of 10</source>
        <translation>{question}, {pain} de 10</translation>
    </message>
    <message>
        <source>Let the arm rest. How much does it hurt?</source>
        <translation>Deje descansar el brazo. ¿Cuánto le duele?</translation>
    </message>
    <message>
        <source>pain from 0 to 10</source>
        <translation>dolor de 0 a 10</translation>
    </message>
    <message>
        <source>Next exercise</source>
        <translation>Siguiente ejercicio</translation>
    </message>
    <message>
        <source>N</source>
        <translation>N</translation>
    </message>
    <message>
        <source>10: worst imaginable</source>
        <translation>10: el peor imaginable</translation>
    </message>
    <message>
        <source>0: no pain</source>
        <translation>0: ningún dolor</translation>
    </message>
    <message>
        <source>What stopped the movement?</source>
        <translation>¿Qué detuvo el movimiento?</translation>
    </message>
    <message>
        <source>time shown</source>
        <translation>periodo mostrado</translation>
    </message>
    <message>
        <source>how it was done</source>
        <translation>cómo se hizo</translation>
    </message>
    <message>
        <source>Show table</source>
        <translation>Ver tabla</translation>
    </message>
    <message>
        <source>Show more in the chart</source>
        <translation>Mostrar más en el gráfico</translation>
    </message>
    <message>
        <source>Details</source>
        <translation>Detalles</translation>
    </message>
    <message>
        <source>Show less in the chart</source>
        <translation>Mostrar menos en el gráfico</translation>
    </message>
    <message>
        <source>Show chart</source>
        <translation>Ver gráfico</translation>
    </message>
    <message>
        <source>Fewer details</source>
        <translation>Menos detalles</translation>
    </message>
    <message>
        <source>All sessions</source>
        <translation>Todas las sesiones</translation>
    </message>
    <message>
        <source>Measure now</source>
        <translation>Medir ahora</translation>
    </message>
    <message>
        <source>Whose progress?</source>
        <translation>¿El progreso de quién?</translation>
    </message>
    <message>
        <source>Show report</source>
        <translation>Ver informe</translation>
    </message>
    <message>
        <source>Back to the charts</source>
        <translation>Volver a los gráficos</translation>
    </message>
    <message>
        <source>The pain rated on {day} has been corrected. You can undo this until Thawline is closed.</source>
        <translation>Se ha corregido el dolor anotado el {day}. Puede deshacerlo hasta que se cierre Thawline.</translation>
    </message>
    <message>
        <source>Events</source>
        <translation>Acontecimientos</translation>
    </message>
    <message>
        <source>Injection, flare, therapy, medicine, camera</source>
        <translation>Infiltración, brote, terapia, medicación, cámara</translation>
    </message>
    <message>
        <source>This event is deleted: {event}. You can undo this until Thawline is closed.</source>
        <translation>Se ha eliminado este acontecimiento: {event}. Puede deshacerlo hasta que se cierre Thawline.</translation>
    </message>
    <message>
        <source>The session of {day} is deleted. You can undo this until Thawline is closed.</source>
        <translation>Se ha borrado la sesión del {day}. Puede deshacerlo hasta que se cierre Thawline.</translation>
    </message>
    <message>
        <source>Ask the patient: the pain rose from {before} to {pain} of 10.</source>
        <translation>Pregunte al paciente: el dolor ha subido de {before} a {pain} de 10.</translation>
    </message>
    <message>
        <source>Asked now because the pain rose from {before} to {pain} of 10.</source>
        <translation>Se pregunta ahora porque el dolor ha subido de {before} a {pain} de 10.</translation>
    </message>
    <message>
        <source>Ask the patient: the pain was rated {pain} of 10.</source>
        <translation>Pregunte al paciente: el dolor fue de {pain} de 10.</translation>
    </message>
    <message>
        <source>Ask the patient: pain reached {pain} of 10 today.</source>
        <translation>Pregunte al paciente: hoy el dolor llegó a {pain} de 10.</translation>
    </message>
    <message>
        <source>Asked again because pain reached {pain} of 10 today.</source>
        <translation>Se pregunta de nuevo porque hoy el dolor llegó a {pain} de 10.</translation>
    </message>
    <message>
        <source>{here} of {of}</source>
        <translation>{here} de {of}</translation>
    </message>
    <message>
        <source>Ask the patient.</source>
        <translation>Pregunte al paciente.</translation>
    </message>
    <message>
        <source>Another movement that does not hurt</source>
        <translation>Otro movimiento que no duela</translation>
    </message>
    <message>
        <source>Show the rest</source>
        <translation>Ver el resto</translation>
    </message>
    <message>
        <source>Show {count} more</source>
        <translation>Ver {count} más</translation>
    </message>
    <message>
        <source>Stop for today</source>
        <translation>Parar por hoy</translation>
    </message>
    <message>
        <source>sessions</source>
        <translation>sesiones</translation>
    </message>
    <message>
        <source>Earlier</source>
        <translation>Anterior</translation>
    </message>
    <message>
        <source>Later</source>
        <translation>Siguiente</translation>
    </message>
    <message>
        <source>Delete this session...</source>
        <translation>Borrar esta sesión...</translation>
    </message>
    <message>
        <source>Correct pain...</source>
        <translation>Corregir el dolor...</translation>
    </message>
    <message>
        <source>All sessions: {person}</source>
        <translation>Sesiones: {person}</translation>
    </message>
    <message>
        <source>Keep it</source>
        <translation>Conservarla</translation>
    </message>
    <message>
        <source>Delete it</source>
        <translation>Borrarla</translation>
    </message>
    <message>
        <source>Noted: </source>
        <translation>Anotado: </translation>
    </message>
    <message>
        <source>Pain relief within 4 hours before.</source>
        <translation>Analgésico en las 4 horas anteriores.</translation>
    </message>
    <message>
        <source>All movements</source>
        <translation>Todos los movimientos</translation>
    </message>
    <message>
        <source>Ended early; these are the results up to then.</source>
        <translation>Terminada antes de tiempo; estos son los resultados hasta ese momento.</translation>
    </message>
    <message>
        <source>at rest {pain}</source>
        <translation>en reposo {pain}</translation>
    </message>
    <message>
        <source>last night {pain}</source>
        <translation>la noche anterior {pain}</translation>
    </message>
    <message>
        <source>worst in 24 hours {pain}</source>
        <translation>el peor en 24 horas {pain}</translation>
    </message>
    <message>
        <source>Pain before the session (0 to 10): {ratings}.</source>
        <translation>Dolor antes de la sesión (0 a 10): {ratings}.</translation>
    </message>
    <message>
        <source>from the side</source>
        <translation>de lado</translation>
    </message>
    <message>
        <source>from the front</source>
        <translation>de frente</translation>
    </message>
    <message>
        <source>from behind</source>
        <translation>por detrás</translation>
    </message>
    <message>
        <source>turned halfway</source>
        <translation>medio de lado</translation>
    </message>
    <message>
        <source>standard</source>
        <translation>estándar</translation>
    </message>
    <message>
        <source>fast</source>
        <translation>rápido</translation>
    </message>
    <message>
        <source>detailed</source>
        <translation>detallado</translation>
    </message>
    <message>
        <source>{conduct}. Viewed {view}, measured against {reference}. Body tracking: {level}.</source>
        <translation>{conduct}. Visto {view}, medido con {reference} como referencia. Seguimiento del cuerpo: {level}.</translation>
    </message>
    <message>
        <source>the trunk</source>
        <translation>el tronco</translation>
    </message>
    <message>
        <source>the vertical</source>
        <translation>la vertical</translation>
    </message>
    <message>
        <source>Trial {number}, from {start} to {end} s, no hold</source>
        <translation>Intento {number}, de {start} a {end} s, sin mantener</translation>
    </message>
    <message>
        <source>Readings in it: {count}. You can undo this until Thawline is closed. Exports, reports and backups made earlier still contain it.</source>
        <translation>Lecturas que contiene: {count}. Puede deshacerlo hasta que se cierre Thawline. Las exportaciones, los informes y las copias de seguridad hechos antes la conservan.</translation>
    </message>
    <message>
        <source>Delete the session of {day}?</source>
        <translation>¿Borrar la sesión del {day}?</translation>
    </message>
    <message>
        <source>Measured after exercises, so shown separately and not compared with the others.</source>
        <translation>Medida después de los ejercicios; se muestra aparte y no se compara con las demás.</translation>
    </message>
    <message>
        <source>Trial {number}, held from {start} to {end} s</source>
        <translation>Intento {number}, mantenido de {start} a {end} s</translation>
    </message>
    <message>
        <source>Look for cameras again</source>
        <translation>Buscar cámaras otra vez</translation>
    </message>
    <message>
        <source>Nothing seen yet</source>
        <translation>Todavía no se ve nada</translation>
    </message>
    <message>
        <source>Mirror the picture</source>
        <translation>Mostrar la imagen como en un espejo</translation>
    </message>
    <message>
        <source>Check left and right</source>
        <translation>Comprobar izquierda y derecha</translation>
    </message>
    <message>
        <source>Play a tone</source>
        <translation>Reproducir un tono</translation>
    </message>
    <message>
        <source>Say a sentence</source>
        <translation>Decir una frase</translation>
    </message>
    <message>
        <source>Camera, sound and more</source>
        <translation>Cámara, sonido y más</translation>
    </message>
    <message>
        <source>Camera</source>
        <translation>Cámara</translation>
    </message>
    <message>
        <source>Thawline then knows left from right. Raise it only as far as is comfortable.</source>
        <translation>Así Thawline distingue la izquierda de la derecha. Levántela solo hasta donde le resulte cómodo.</translation>
    </message>
    <message>
        <source>Sound and voice</source>
        <translation>Sonido y voz</translation>
    </message>
    <message>
        <source>Waiting for your hand</source>
        <translation>Esperando su mano</translation>
    </message>
    <message>
        <source>This is a good place.</source>
        <translation>Este es un buen lugar.</translation>
    </message>
    <message>
        <source>Start anyway</source>
        <translation>Empezar de todos modos</translation>
    </message>
    <message>
        <source>If you heard nothing, turn up the volume of the computer.</source>
        <translation>Si no ha oído nada, suba el volumen del ordenador.</translation>
    </message>
    <message>
        <source>No voice was found on this computer. Tones and the screen guide you instead.</source>
        <translation>No se encontró ninguna voz en este ordenador. Le guiarán los tonos y la pantalla.</translation>
    </message>
    <message>
        <source>Use the left hand</source>
        <translation>Usar la mano izquierda</translation>
    </message>
    <message>
        <source>Use the right hand</source>
        <translation>Usar la mano derecha</translation>
    </message>
    <message>
        <source>No sound device was found. The same words are on the screen.</source>
        <translation>No se encontró ningún dispositivo de sonido. Lo mismo aparece en la pantalla.</translation>
    </message>
    <message>
        <source>Save the board to print</source>
        <translation>Guardar el tablero para imprimir</translation>
    </message>
    <message>
        <source>Calibrate the lens</source>
        <translation>Calibrar la lente</translation>
    </message>
    <message>
        <source>Mark upright lines</source>
        <translation>Marcar líneas verticales</translation>
    </message>
    <message>
        <source>Mark neck and pelvis</source>
        <translation>Marcar cuello y pelvis</translation>
    </message>
    <message>
        <source>Clear</source>
        <translation>Borrar</translation>
    </message>
    <message>
        <source>Open a table of readings</source>
        <translation>Abrir una tabla de lecturas</translation>
    </message>
    <message>
        <source>Back to set-up</source>
        <translation>Volver a la preparación</translation>
    </message>
    <message>
        <source>How much readings vary</source>
        <translation>Cuánto varían las lecturas</translation>
    </message>
    <message>
        <source>trunk, hip to shoulder</source>
        <translation>tronco, de la cadera al hombro</translation>
    </message>
    <message>
        <source>upper arm</source>
        <translation>brazo</translation>
    </message>
    <message>
        <source>forearm</source>
        <translation>antebrazo</translation>
    </message>
    <message>
        <source>shoulder to shoulder</source>
        <translation>de hombro a hombro</translation>
    </message>
    <message>
        <source>{length}, centimetres</source>
        <translation>{length}, centímetros</translation>
    </message>
    <message>
        <source>In centimetres: the trunk and at least one other.</source>
        <translation>En centímetros: el tronco y al menos otra.</translation>
    </message>
    <message>
        <source>Check the length marked ✗, then save.</source>
        <translation>Revise la longitud marcada con ✗ y guarde.</translation>
    </message>
    <message>
        <source>Usually {low} to {high} cm.</source>
        <translation>Entre {low} y {high} cm.</translation>
    </message>
    <message>
        <source>With this trunk {low} to {high} cm.</source>
        <translation>Con este tronco, {low} a {high} cm.</translation>
    </message>
    <message>
        <source>{text} is not a number.</source>
        <translation>{text} no es un número.</translation>
    </message>
    <message>
        <source>Type at least one other length too.</source>
        <translation>Escriba también al menos otra longitud.</translation>
    </message>
    <message>
        <source>Lens</source>
        <translation>Lente</translation>
    </message>
    <message>
        <source>10 min</source>
        <translation>10 min</translation>
    </message>
    <message>
        <source>Level</source>
        <translation>Nivel</translation>
    </message>
    <message>
        <source>2 min</source>
        <translation>2 min</translation>
    </message>
    <message>
        <source>Neck and pelvis</source>
        <translation>Cuello y pelvis</translation>
    </message>
    <message>
        <source>Delete where I stood</source>
        <translation>Borrar dónde estuve</translation>
    </message>
    <message>
        <source>Show how much my sessions vary</source>
        <translation>Ver cuánto varían mis sesiones</translation>
    </message>
    <message>
        <source>Save the lengths</source>
        <translation>Guardar las longitudes</translation>
    </message>
    <message>
        <source>Camera and goniometer, from a table</source>
        <translation>Cámara y goniómetro, de una tabla</translation>
    </message>
    <message>
        <source>From one session to the next</source>
        <translation>De una sesión a la siguiente</translation>
    </message>
    <message>
        <source>Agreement</source>
        <translation>Concordancia</translation>
    </message>
    <message>
        <source>3 min, helper</source>
        <translation>3 min, ayudante</translation>
    </message>
    <message>
        <source>3 min, tape</source>
        <translation>3 min, cinta</translation>
    </message>
    <message>
        <source>Where you stand</source>
        <translation>Su lugar</translation>
    </message>
    <message>
        <source>Optional: for more exact readings</source>
        <translation>Opcional: lecturas más exactas</translation>
    </message>
    <message>
        <source>Look up</source>
        <translation>Consultar</translation>
    </message>
    <message>
        <source>Camera and body</source>
        <translation>Cámara y cuerpo</translation>
    </message>
    <message>
        <source>Body lengths</source>
        <translation>Longitudes del cuerpo</translation>
    </message>
    <message>
        <source>Enter the lengths</source>
        <translation>Introducir las longitudes</translation>
    </message>
    <message>
        <source>Type the trunk and at least one other length.</source>
        <translation>Escriba el tronco y al menos otra longitud.</translation>
    </message>
    <message>
        <source>Left and right</source>
        <translation>Izquierda y derecha</translation>
    </message>
    <message>
        <source>For narrower ranges</source>
        <translation>Para intervalos más estrechos</translation>
    </message>
    <message>
        <source>Raise your right hand.</source>
        <translation>Levante la mano derecha.</translation>
    </message>
    <message>
        <source>Stand where the camera sees you from head to hips.</source>
        <translation>Póngase donde la cámara le vea de la cabeza a las caderas.</translation>
    </message>
    <message>
        <source>This is the voice that tells you what to do.</source>
        <translation>Esta es la voz que le dice qué hacer.</translation>
    </message>
    <message>
        <source>Sore today? Do a shorter session (two trials, no hand behind the back)</source>
        <translation>¿Le duele hoy? Haga una sesión más corta (dos intentos, sin mano a la espalda)</translation>
    </message>
    <message>
        <source>Note today&apos;s pain</source>
        <translation>Anotar el dolor de hoy</translation>
    </message>
    <message>
        <source>I measure patients in a clinic</source>
        <translation>Mido a pacientes en una consulta</translation>
    </message>
    <message>
        <source>Start measuring</source>
        <translation>Empezar a medir</translation>
    </message>
    <message>
        <source>Pain reached {pain} of 10 today. Let the shoulder rest; carry on another day.</source>
        <translation>Hoy el dolor llegó a {pain} de 10. Deje descansar el hombro y continúe otro día.</translation>
    </message>
    <message>
        <source>Measure all the same</source>
        <translation>Medir de todos modos</translation>
    </message>
    <message>
        <source>Choose the movements yourself</source>
        <translation>Elegir los movimientos</translation>
    </message>
    <message>
        <source>Back to the suggested movements</source>
        <translation>Volver a los movimientos propuestos</translation>
    </message>
    <message>
        <source>Today</source>
        <translation>Hoy</translation>
    </message>
    <message>
        <source>Nothing to measure today</source>
        <translation>Hoy no hay nada que medir</translation>
    </message>
    <message>
        <source>Choose today&apos;s movements</source>
        <translation>Elija los movimientos de hoy</translation>
    </message>
    <message>
        <source>Choose at least one movement.</source>
        <translation>Elija al menos un movimiento.</translation>
    </message>
    <message>
        <source>The hand behind the back is left out on a sore day.</source>
        <translation>Un día con dolor se omite la mano a la espalda.</translation>
    </message>
    <message>
        <source>{tasks}, about {minutes}</source>
        <translation>{tasks}, aprox. {minutes}</translation>
    </message>
    <message>
        <source>1 movement</source>
        <translation>1 movimiento</translation>
    </message>
    <message>
        <source>{count} movements</source>
        <translation>{count} movimientos</translation>
    </message>
    <message>
        <source>1 minute</source>
        <translation>1 minuto</translation>
    </message>
    <message>
        <source>{count} minutes</source>
        <translation>{count} minutos</translation>
    </message>
    <message>
        <source>Once a week, all movements of both arms are measured.</source>
        <translation>Una vez por semana se miden todos los movimientos de ambos brazos.</translation>
    </message>
    <message>
        <source>Best at the same time of day, before your exercises.</source>
        <translation>Mejor a la misma hora del día, antes de sus ejercicios.</translation>
    </message>
    <message>
        <source>Best at about {time}, as most times before, and before your exercises.</source>
        <translation>Mejor hacia las {time}, como casi siempre, y antes de sus ejercicios.</translation>
    </message>
    <message>
        <source>left arm</source>
        <translation>brazo izquierdo</translation>
    </message>
    <message>
        <source>right arm</source>
        <translation>brazo derecho</translation>
    </message>
    <message>
        <source>Next on {day}</source>
        <translation>La próxima vez, el {day}</translation>
    </message>
    <message>
        <source>Both or neither</source>
        <translation>Ambos o ninguno</translation>
    </message>
    <message>
        <source>which shoulder</source>
        <translation>qué hombro</translation>
    </message>
    <message>
        <source>Save event</source>
        <translation>Guardar acontecimiento</translation>
    </message>
    <message>
        <source>day of the event</source>
        <translation>día del acontecimiento</translation>
    </message>
    <message>
        <source>Which shoulder?</source>
        <translation>¿Qué hombro?</translation>
    </message>
    <message>
        <source>When?</source>
        <translation>¿Cuándo?</translation>
    </message>
    <message>
        <source>What events do</source>
        <translation>Qué hacen los acontecimientos</translation>
    </message>
    <message>
        <source>Events appear as flags above the charts. An injection, a procedure, a flare or a change of camera starts a new line. Your results before and after a treatment, a flare, or a change of medicine or home programme are compared. After a clinic visit you see what has changed since. A new home programme and a session in a clinic are added automatically.</source>
        <translation>Los acontecimientos aparecen como banderas sobre los gráficos. Una infiltración, una intervención, un brote o un cambio de cámara empieza una línea nueva. Se comparan sus resultados antes y después de un tratamiento, un brote, o un cambio de medicación o de programa en casa. Tras una consulta se ve qué ha cambiado desde entonces. Un programa nuevo y una sesión en la consulta se añaden automáticamente.</translation>
    </message>
    <message>
        <source>Noted so far</source>
        <translation>Anotado hasta ahora</translation>
    </message>
    <message>
        <source>Add an event: {person}</source>
        <translation>Añadir un acontecimiento: {person}</translation>
    </message>
    <message>
        <source>It appears as a flag above the charts.</source>
        <translation>Aparece como una bandera sobre los gráficos.</translation>
    </message>
    <message>
        <source>No events so far.</source>
        <translation>Ningún acontecimiento hasta ahora.</translation>
    </message>
    <message>
        <source>Saved: {event}, {day}</source>
        <translation>Guardado: {event}, {day}</translation>
    </message>
    <message>
        <source>Undo: {event}</source>
        <translation>Deshacer: {event}</translation>
    </message>
    <message>
        <source>Choose an event first</source>
        <translation>Elija primero un acontecimiento</translation>
    </message>
    <message>
        <source>Please enter the day as {day}. It cannot be after today.</source>
        <translation>Escriba el día así: {day}. No puede ser posterior a hoy.</translation>
    </message>
    <message>
        <source>Left shoulder</source>
        <translation>Hombro izquierdo</translation>
    </message>
    <message>
        <source>Right shoulder</source>
        <translation>Hombro derecho</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Borrar</translation>
    </message>
    <message>
        <source>Delete: {event}</source>
        <translation>Borrar: {event}</translation>
    </message>
    <message>
        <source>pain, 0 to 10</source>
        <translation>dolor, 0 a 10</translation>
    </message>
    <message>
        <source>exercises</source>
        <translation>ejercicios</translation>
    </message>
    <message>
        <source>no result</source>
        <translation>sin resultado</translation>
    </message>
    <message>
        <source>{event}, {side}</source>
        <translation>{event}, {side}</translation>
    </message>
    <message>
        <source>H</source>
        <translation>H</translation>
    </message>
    <message>
        <source>Pseudonym of the new person</source>
        <translation>Seudónimo de la persona nueva</translation>
    </message>
    <message>
        <source>Another person</source>
        <translation>Otra persona</translation>
    </message>
    <message>
        <source>Do not save</source>
        <translation>No guardar</translation>
    </message>
    <message>
        <source>I measure at home</source>
        <translation>Mido en casa</translation>
    </message>
    <message>
        <source>Someone measured before</source>
        <translation>Una persona ya medida</translation>
    </message>
    <message>
        <source>Without saving</source>
        <translation>Sin guardar</translation>
    </message>
    <message>
        <source>Arm to measure</source>
        <translation>Brazo que se mide</translation>
    </message>
    <message>
        <source>Which arm is measured?</source>
        <translation>¿Qué brazo se mide?</translation>
    </message>
    <message>
        <source>2 trials each, about {minutes}</source>
        <translation>2 intentos de cada uno, aprox. {minutes}</translation>
    </message>
    <message>
        <source>Clear all</source>
        <translation>Quitar todos</translation>
    </message>
    <message>
        <source>Choose all</source>
        <translation>Elegir todos</translation>
    </message>
    <message>
        <source>Measure {tasks}</source>
        <translation>Medir {tasks}</translation>
    </message>
    <message>
        <source>Choose a movement first</source>
        <translation>Elija un movimiento</translation>
    </message>
    <message>
        <source>Nothing is saved: no name, no answers, no results.</source>
        <translation>No se guarda nada: ni nombre, ni respuestas, ni resultados.</translation>
    </message>
    <message>
        <source>Name or number</source>
        <translation>Nombre o número</translation>
    </message>
    <message>
        <source>Open progress</source>
        <translation>Abrir el progreso</translation>
    </message>
    <message>
        <source>No real name is needed; a pseudonym will do.</source>
        <translation>No hace falta el nombre real; basta un seudónimo.</translation>
    </message>
    <message>
        <source>Last: {name}</source>
        <translation>Última: {name}</translation>
    </message>
    <message>
        <source>B</source>
        <translation>B</translation>
    </message>
    <message>
        <source>Pain relief was taken in the last four hours</source>
        <translation>Analgésico tomado en las últimas cuatro horas</translation>
    </message>
    <message>
        <source>How are the movements done?</source>
        <translation>¿Cómo se hacen los movimientos?</translation>
    </message>
    <message>
        <source>Who is being measured?</source>
        <translation>¿A quién se va a medir?</translation>
    </message>
    <message>
        <source>Someone new</source>
        <translation>Una persona nueva</translation>
    </message>
    <message>
        <source>What to measure</source>
        <translation>Qué medir</translation>
    </message>
    <message>
        <source>Body position</source>
        <translation>Posición del cuerpo</translation>
    </message>
    <message>
        <source>help with the movement</source>
        <translation>ayuda con el movimiento</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Cambiar</translation>
    </message>
    <message>
        <source>Change how the movements are done</source>
        <translation>Cambiar cómo se hacen los movimientos</translation>
    </message>
    <message>
        <source>Sitting and assisted results are plotted separately.</source>
        <translation>Los resultados sentado o con ayuda se representan aparte.</translation>
    </message>
    <message>
        <source>Add a person</source>
        <translation>Añadir una persona</translation>
    </message>
    <message>
        <source>Edit</source>
        <translation>Editar</translation>
    </message>
    <message>
        <source>Which shoulder is stiff?</source>
        <translation>¿Qué hombro está rígido?</translation>
    </message>
    <message>
        <source>A note, if you like</source>
        <translation>Una nota, si quiere</translation>
    </message>
    <message>
        <source>note</source>
        <translation>nota</translation>
    </message>
    <message>
        <source>Report</source>
        <translation>Informe</translation>
    </message>
    <message>
        <source>The other side</source>
        <translation>El otro lado</translation>
    </message>
    <message>
        <source>Add a note</source>
        <translation>Añadir una nota</translation>
    </message>
    <message>
        <source>Measure this side</source>
        <translation>Medir este lado</translation>
    </message>
    <message>
        <source>T</source>
        <translation>T</translation>
    </message>
    <message>
        <source>Add goniometer values</source>
        <translation>Añadir valores de goniómetro</translation>
    </message>
    <message>
        <source>Copy as text</source>
        <translation>Copiar como texto</translation>
    </message>
    <message>
        <source>Another movement</source>
        <translation>Otro movimiento</translation>
    </message>
    <message>
        <source>M</source>
        <translation>M</translation>
    </message>
    <message>
        <source>measured earlier today</source>
        <translation>medido antes, hoy mismo</translation>
    </message>
    <message>
        <source>What you said about pain is saved.</source>
        <translation>Lo que dijo sobre el dolor está guardado.</translation>
    </message>
    <message>
        <source>Measure the {side} side</source>
        <translation>Medir el lado {side}</translation>
    </message>
    <message>
        <source>Copied as text</source>
        <translation>Copiado como texto</translation>
    </message>
    <message>
        <source>No reading today</source>
        <translation>Hoy no hay lectura</translation>
    </message>
    <message>
        <source>Today&apos;s results, saved</source>
        <translation>Resultados de hoy, guardados</translation>
    </message>
    <message>
        <source>First results, saved</source>
        <translation>Primeros resultados, guardados</translation>
    </message>
    <message>
        <source>Today&apos;s results, not saved</source>
        <translation>Resultados de hoy, sin guardar</translation>
    </message>
    <message>
        <source>End the exercises</source>
        <translation>Terminar los ejercicios</translation>
    </message>
    <message>
        <source>Stop: it hurts</source>
        <translation>Parar: me duele</translation>
    </message>
    <message>
        <source>Measuring</source>
        <translation>Al medir</translation>
    </message>
    <message>
        <source>S</source>
        <translation>S</translation>
    </message>
    <message>
        <source>Pause, continue</source>
        <translation>Hacer una pausa, continuar</translation>
    </message>
    <message>
        <source>Try again after a problem</source>
        <translation>Probar otra vez después de un problema</translation>
    </message>
    <message>
        <source>0 to 9</source>
        <translation>0 a 9</translation>
    </message>
    <message>
        <source>Pain from 0 to 9</source>
        <translation>Dolor de 0 a 9</translation>
    </message>
    <message>
        <source>X</source>
        <translation>X</translation>
    </message>
    <message>
        <source>Pain of 10</source>
        <translation>Dolor de 10</translation>
    </message>
    <message>
        <source>In a clinic</source>
        <translation>En la consulta</translation>
    </message>
    <message>
        <source>Measure the side that is missing</source>
        <translation>Medir el lado que falta</translation>
    </message>
    <message>
        <source>Skip exercise</source>
        <translation>Omitir ejercicio</translation>
    </message>
    <message>
        <source>Read all, or the open clip</source>
        <translation>Leer todas, o la grabación abierta</translation>
    </message>
    <message>
        <source>Play, pause</source>
        <translation>Reproducir, hacer una pausa</translation>
    </message>
    <message>
        <source>One frame back</source>
        <translation>Un fotograma atrás</translation>
    </message>
    <message>
        <source>One frame forward</source>
        <translation>Un fotograma adelante</translation>
    </message>
    <message>
        <source>Page Up</source>
        <translation>RePág</translation>
    </message>
    <message>
        <source>Previous clip</source>
        <translation>Grabación anterior</translation>
    </message>
    <message>
        <source>Enlarge the picture</source>
        <translation>Ampliar la imagen</translation>
    </message>
    <message>
        <source>Make the picture smaller</source>
        <translation>Reducir la imagen</translation>
    </message>
    <message>
        <source>Show the whole picture</source>
        <translation>Mostrar la imagen entera</translation>
    </message>
    <message>
        <source>Enlarge the curve</source>
        <translation>Ampliar la curva</translation>
    </message>
    <message>
        <source>Make the curve smaller</source>
        <translation>Reducir la curva</translation>
    </message>
    <message>
        <source>Show the whole curve</source>
        <translation>Mostrar la curva entera</translation>
    </message>
    <message>
        <source>Every page</source>
        <translation>En todas las páginas</translation>
    </message>
    <message>
        <source>F1</source>
        <translation>F1</translation>
    </message>
    <message>
        <source>F2</source>
        <translation>F2</translation>
    </message>
    <message>
        <source>Ctrl H</source>
        <translation>Ctrl H</translation>
    </message>
    <message>
        <source>Ctrl E</source>
        <translation>Ctrl E</translation>
    </message>
    <message>
        <source>Ctrl +</source>
        <translation>Ctrl +</translation>
    </message>
    <message>
        <source>Larger text</source>
        <translation>Texto más grande</translation>
    </message>
    <message>
        <source>Ctrl -</source>
        <translation>Ctrl -</translation>
    </message>
    <message>
        <source>Smaller text</source>
        <translation>Texto más pequeño</translation>
    </message>
    <message>
        <source>Exercise {here} of {of}</source>
        <translation>Ejercicio {here} de {of}</translation>
    </message>
    <message>
        <source>Finish</source>
        <translation>Terminar</translation>
    </message>
    <message>
        <source>Nothing was measured.</source>
        <translation>No se midió nada.</translation>
    </message>
    <message>
        <source>Get ready: {exercise}.</source>
        <translation>Prepárese: {exercise}.</translation>
    </message>
    <message>
        <source>Move slowly. Stop before it becomes painful.</source>
        <translation>Mueva el brazo despacio. Pare antes de que duela.</translation>
    </message>
    <message>
        <source>Let the arm swing gently.</source>
        <translation>Deje oscilar el brazo con suavidad.</translation>
    </message>
    <message>
        <source>of {count}</source>
        <translation>de {count}</translation>
    </message>
    <message>
        <source>Repetition {number}</source>
        <translation>Repetición {number}</translation>
    </message>
    <message>
        <source>Repetition {number} of {count}</source>
        <translation>Repetición {number} de {count}</translation>
    </message>
    <message>
        <source>Stop at the first pain.</source>
        <translation>Pare en cuanto note dolor.</translation>
    </message>
    <message>
        <source>Your programme says to stop when pain reaches {limit}.</source>
        <translation>Su programa indica parar cuando el dolor llegue a {limit}.</translation>
    </message>
    <message>
        <source>1 exercise</source>
        <translation>1 ejercicio</translation>
    </message>
    <message>
        <source>{count} exercises</source>
        <translation>{count} ejercicios</translation>
    </message>
    <message>
        <source>about 1 minute</source>
        <translation>alrededor de 1 minuto</translation>
    </message>
    <message>
        <source>Let the hand slide forwards.</source>
        <translation>Deje que la mano se deslice hacia delante.</translation>
    </message>
    <message>
        <source>Let the hand slide to the side.</source>
        <translation>Deje que la mano se deslice hacia el lado.</translation>
    </message>
    <message>
        <source>Arm hanging, small circles.</source>
        <translation>Brazo colgando, círculos pequeños.</translation>
    </message>
    <message>
        <source>Walk your fingers up the wall.</source>
        <translation>Suba los dedos por la pared.</translation>
    </message>
    <message>
        <source>Elbow at your side. Turn away from the hand.</source>
        <translation>Codo junto al costado. Gire alejándose de la mano.</translation>
    </message>
    <message>
        <source>Elbow at your side. Turn towards the hand.</source>
        <translation>Codo junto al costado. Gire hacia la mano.</translation>
    </message>
    <message>
        <source>Walk away from the handle.</source>
        <translation>Aléjese del asa caminando.</translation>
    </message>
    <message>
        <source>Turn away from the handle.</source>
        <translation>Gire alejándose del asa.</translation>
    </message>
    <message>
        <source>Draw the arm across your chest.</source>
        <translation>Lleve el brazo por delante del pecho.</translation>
    </message>
    <message>
        <source>Draw the towel gently upwards.</source>
        <translation>Tire de la toalla suavemente hacia arriba.</translation>
    </message>
    <message>
        <source>repetition</source>
        <translation>repetición</translation>
    </message>
    <message>
        <source>rep.</source>
        <translation>rep.</translation>
    </message>
    <message>
        <source>{done} of {planned} done</source>
        <translation>{done} de {planned} hechas</translation>
    </message>
    <message>
        <source>{done} done</source>
        <translation>{done} hechas</translation>
    </message>
    <message>
        <source>Starts by itself.</source>
        <translation>Empieza solo.</translation>
    </message>
    <message>
        <source>Next: repetition {number}</source>
        <translation>Siguiente: repetición {number}</translation>
    </message>
    <message>
        <source>Next: {repetition}</source>
        <translation>Siguiente: {repetition}</translation>
    </message>
    <message>
        <source>Stop at pain {limit}&#xa0;of&#xa0;10, or before.</source>
        <translation>Pare con dolor {limit}&#xa0;de&#xa0;10, o antes.</translation>
    </message>
    <message>
        <source>about {minutes} minutes</source>
        <translation>unos {minutes} minutos</translation>
    </message>
    <message>
        <source>{exercises} not done yet.</source>
        <translation>Sin hacer todavía: {exercises}.</translation>
    </message>
    <message>
        <source>Next: {exercises}.</source>
        <translation>A continuación: {exercises}.</translation>
    </message>
    <message>
        <source>Logged this morning.</source>
        <translation>Anotado esta mañana.</translation>
    </message>
    <message>
        <source>Logged this afternoon.</source>
        <translation>Anotado esta tarde.</translation>
    </message>
    <message>
        <source>Logged this evening.</source>
        <translation>Anotado esta noche.</translation>
    </message>
    <message>
        <source>morning</source>
        <translation>mañana</translation>
    </message>
    <message>
        <source>afternoon</source>
        <translation>tarde</translation>
    </message>
    <message>
        <source>evening</source>
        <translation>noche</translation>
    </message>
    <message>
        <source>Logged today: {parts}.</source>
        <translation>Anotado hoy: {parts}.</translation>
    </message>
    <message>
        <source>Easier</source>
        <translation>Más fácil</translation>
    </message>
    <message>
        <source>The same</source>
        <translation>Igual</translation>
    </message>
    <message>
        <source>Harder</source>
        <translation>Más difícil</translation>
    </message>
    <message>
        <source>pain {pain} of 10</source>
        <translation>dolor {pain} de 10</translation>
    </message>
    <message>
        <source>done {count} of {times} times today</source>
        <translation>hecho {count} de {times} veces hoy</translation>
    </message>
    <message>
        <source>not done</source>
        <translation>sin hacer</translation>
    </message>
    <message>
        <source>partly done: 1 repetition</source>
        <translation>hecho en parte: 1 repetición</translation>
    </message>
    <message>
        <source>partly done: {count} repetitions</source>
        <translation>hecho en parte: {count} repeticiones</translation>
    </message>
    <message>
        <source>Programme from {day}.</source>
        <translation>Programa desde el {day}.</translation>
    </message>
    <message>
        <source>stopped by {reason}</source>
        <translation>detenido por {reason}</translation>
    </message>
    <message>
        <source>From {time} s</source>
        <translation>Desde {time} s</translation>
    </message>
    <message>
        <source>not counted</source>
        <translation>no contado</translation>
    </message>
    <message>
        <source>not counted ({reasons})</source>
        <translation>no contado ({reasons})</translation>
    </message>
    <message>
        <source>{reading}, discarded by you</source>
        <translation>{reading}, descartada por usted</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Ver</translation>
    </message>
    <message>
        <source>Show trial {number}</source>
        <translation>Ver el intento {number}</translation>
    </message>
    <message>
        <source>Discarded by you</source>
        <translation>Descartado por usted</translation>
    </message>
    <message>
        <source>None of these</source>
        <translation>Ninguno de estos</translation>
    </message>
    <message>
        <source>Yes, at least one</source>
        <translation>Sí, al menos uno</translation>
    </message>
    <message>
        <source>What this is, and what it is not</source>
        <translation>Qué es esto y qué no es</translation>
    </message>
    <message>
        <source>There is no target to reach. Stop before it becomes painful.</source>
        <translation>No hay ninguna meta que alcanzar. Pare antes de que duela.</translation>
    </message>
    <message>
        <source>Signs of an emergency</source>
        <translation>Señales de urgencia</translation>
    </message>
    <message>
        <source>Chest pain, pressure or tightness, or pain spreading to the jaw, neck, back or arm, especially with breathlessness, sweating or feeling sick. This applies whichever shoulder hurts.</source>
        <translation>Dolor, presión u opresión en el pecho, o dolor que se extiende a la mandíbula, el cuello, la espalda o el brazo, sobre todo con falta de aire, sudor o náuseas. Esto vale sea cual sea el hombro que le duele.</translation>
    </message>
    <message>
        <source>A hot, red and swollen joint, or a fever and feeling ill. With a weakened immune system, or after a recent injection into the joint, new heat or a fever alone is enough.</source>
        <translation>Articulación caliente, roja e hinchada, o fiebre y malestar. Con las defensas bajas, o tras una inyección reciente en la articulación, basta con calor o fiebre nuevos.</translation>
    </message>
    <message>
        <source>Both shoulders stiff, with a new headache, a tender scalp or worsening eyesight.</source>
        <translation>Los dos hombros rígidos, con dolor de cabeza nuevo, cuero cabelludo sensible o peor vista.</translation>
    </message>
    <message>
        <source>Chest pain, pressure or tightness|jaw, neck, back or arm</source>
        <translation>Dolor, presión u opresión en el pecho|la mandíbula, el cuello, la espalda o el brazo</translation>
    </message>
    <message>
        <source>out of shape|broken</source>
        <translation>deformado|roto</translation>
    </message>
    <message>
        <source>locked</source>
        <translation>bloqueado</translation>
    </message>
    <message>
        <source>hot, red and swollen|fever</source>
        <translation>caliente, roja e hinchada|fiebre</translation>
    </message>
    <message>
        <source>cold, pale, blue or suddenly swollen</source>
        <translation>frío, pálido, azulado o hinchado de pronto</translation>
    </message>
    <message>
        <source>If any of these apply, do not measure. Get help now.</source>
        <translation>Si le ocurre algo de esto, no se mida. Pida ayuda ahora.</translation>
    </message>
    <message>
        <source>Signs that need a clinician soon</source>
        <translation>Señales para consultar pronto</translation>
    </message>
    <message>
        <source>Do any of these apply to you?</source>
        <translation>¿Le ocurre algo de esto?</translation>
    </message>
    <message>
        <source>Constant pain, day and night, that no position or rest eases. (Night pain alone is usual with a stiff shoulder.)</source>
        <translation>Dolor constante, de día y de noche, que no alivia ni el reposo ni ninguna postura. (El dolor solo nocturno es habitual en un hombro rígido.)</translation>
    </message>
    <message>
        <source>cancer|lump or swollen glands|weight loss</source>
        <translation>cáncer|bulto nuevo o ganglios inflamados|pérdida de peso</translation>
    </message>
    <message>
        <source>Constant pain</source>
        <translation>Dolor constante</translation>
    </message>
    <message>
        <source>Weakness, numbness or muscle wasting</source>
        <translation>Debilidad, adormecimiento o pérdida de músculo</translation>
    </message>
    <message>
        <source>swollen or shiny|changed colour</source>
        <translation>hinchada o brillante|cambiado de color</translation>
    </message>
    <message>
        <source>hoarse voice or a cough|one hand getting thinner</source>
        <translation>Ronquera o tos|una mano que se va quedando más delgada</translation>
    </message>
    <message>
        <source>If any of these apply, see a clinician within a few days, before you measure.</source>
        <translation>Si le ocurre algo de esto, consulte con un profesional sanitario en unos días, antes de medirse.</translation>
    </message>
    <message>
        <source>Reasons to check with your clinician first</source>
        <translation>Motivos para preguntar antes</translation>
    </message>
    <message>
        <source>operation, a fracture, a dislocation</source>
        <translation>operación, una fractura, una luxación</translation>
    </message>
    <message>
        <source>come out of its joint</source>
        <translation>se ha salido</translation>
    </message>
    <message>
        <source>pacemaker or lead implant|breast or armpit surgery</source>
        <translation>marcapasos o sus cables|operación del pecho o de la axila</translation>
    </message>
    <message>
        <source>neck|tingling</source>
        <translation>cuello|hormigueo</translation>
    </message>
    <message>
        <source>stroke or a nerve disease</source>
        <translation>ictus o una enfermedad de los nervios</translation>
    </message>
    <message>
        <source>If any of these apply, first ask the clinician who treats you.</source>
        <translation>Si le ocurre algo de esto, pregunte antes al profesional que le trata.</translation>
    </message>
    <message>
        <source>If it does not ease, ask your clinician.</source>
        <translation>Si no cede, consulte a su profesional.</translation>
    </message>
    <message>
        <source>Call the local emergency number.</source>
        <translation>Llame al número de emergencias del lugar.</translation>
    </message>
    <message>
        <source>Please do not measure today.</source>
        <translation>Hoy no se mida, por favor.</translation>
    </message>
    <message>
        <source>Europe</source>
        <translation>Europa</translation>
    </message>
    <message>
        <source>North America</source>
        <translation>América del Norte</translation>
    </message>
    <message>
        <source>United Kingdom</source>
        <translation>Reino Unido</translation>
    </message>
    <message>
        <source>Usually the reason is harmless, but a clinician should look at it first.</source>
        <translation>Casi siempre la causa no es grave, pero conviene que un profesional lo mire antes.</translation>
    </message>
    <message>
        <source>Ask your clinician first.</source>
        <translation>Consulte antes con su profesional.</translation>
    </message>
    <message>
        <source>Tell them what you would do here: raise and turn your arm slowly, by yourself, and stop before it becomes painful.</source>
        <translation>Explíquele qué haría aquí: levantar y girar el brazo despacio, sin ayuda, y parar antes de que duela.</translation>
    </message>
    <message>
        <source>Ask the patient</source>
        <translation>Pregunte al paciente</translation>
    </message>
    <message>
        <source>If any of these apply, have it looked into within a few days, before measuring.</source>
        <translation>Si se cumple algo de esto, haga que se examine en unos días, antes de medir.</translation>
    </message>
    <message>
        <source>Do any of these apply?</source>
        <translation>¿Ocurre algo de esto?</translation>
    </message>
    <message>
        <source>Pictures never leave this computer and are not saved.</source>
        <translation>Las imágenes nunca salen de este ordenador ni se guardan.</translation>
    </message>
    <message>
        <source>A recent pacemaker or lead implant, or breast or armpit surgery.</source>
        <translation>Un marcapasos o sus cables implantados hace poco, o una operación del pecho o de la axila.</translation>
    </message>
    <message>
        <source>That hurt more than it should.</source>
        <translation>Ha dolido más de lo debido.</translation>
    </message>
    <message>
        <source>What was measured is saved. Carry on another day.</source>
        <translation>Lo que se midió está guardado. Continúe otro día.</translation>
    </message>
    <message>
        <source>My clinician agrees</source>
        <translation>Mi profesional lo permite</translation>
    </message>
    <message>
        <source>Thawline estimates by camera how far a shoulder moves, week by week.</source>
        <translation>Thawline estima con la cámara cuánto se mueve un hombro, semana a semana.</translation>
    </message>
    <message>
        <source>It is not a medical device: no diagnosis, and no advice on treatment.</source>
        <translation>No es un producto sanitario: no diagnostica ni da consejos de tratamiento.</translation>
    </message>
    <message>
        <source>Its numbers can be off by several degrees, so each comes with a range.</source>
        <translation>Sus cifras pueden desviarse varios grados; por eso cada una lleva un intervalo.</translation>
    </message>
    <message>
        <source>A drooping face, slurred speech, or an arm or leg that is suddenly weak or numb.</source>
        <translation>Cara caída de un lado, dificultad para hablar, o un brazo o una pierna de repente débil o dormido.</translation>
    </message>
    <message>
        <source>Newly unsteady legs or clumsy hands, or new trouble controlling the bladder or bowels.</source>
        <translation>Inestabilidad nueva al andar o manos torpes, o problemas nuevos para controlar la orina o las heces.</translation>
    </message>
    <message>
        <source>A shoulder that has been out of shape since an injury, or may be broken.</source>
        <translation>Un hombro deformado desde un golpe o una caída, o que puede estar roto.</translation>
    </message>
    <message>
        <source>A shoulder that has been locked since a seizure or an electric shock.</source>
        <translation>Un hombro bloqueado desde una convulsión o una descarga eléctrica.</translation>
    </message>
    <message>
        <source>An arm that is cold, pale, blue or suddenly swollen.</source>
        <translation>Un brazo frío, pálido, azulado o hinchado de pronto.</translation>
    </message>
    <message>
        <source>Shortness of breath after an operation, or after a long time lying still.</source>
        <translation>Falta de aire después de una operación o de mucho tiempo en cama.</translation>
    </message>
    <message>
        <source>Pain at the tip of the shoulder together with tummy pain, or with a possible pregnancy.</source>
        <translation>Dolor en la punta del hombro junto con dolor de barriga o con un posible embarazo.</translation>
    </message>
    <message>
        <source>drooping face|slurred speech|weak or numb</source>
        <translation>Cara caída|dificultad para hablar|débil o dormido</translation>
    </message>
    <message>
        <source>unsteady legs|clumsy hands|bladder or bowels</source>
        <translation>Inestabilidad nueva al andar|manos torpes|la orina o las heces</translation>
    </message>
    <message>
        <source>Shortness of breath</source>
        <translation>Falta de aire</translation>
    </message>
    <message>
        <source>tip of the shoulder|tummy pain|pregnancy</source>
        <translation>punta del hombro|dolor de barriga|embarazo</translation>
    </message>
    <message>
        <source>Both shoulders stiff|headache</source>
        <translation>Los dos hombros rígidos|dolor de cabeza</translation>
    </message>
    <message>
        <source>A history of cancer, a new lump or swollen glands, or unexplained weight loss.</source>
        <translation>Un cáncer anterior, un bulto nuevo o ganglios inflamados, o pérdida de peso sin motivo aparente.</translation>
    </message>
    <message>
        <source>Unable to lift the arm since an injury.</source>
        <translation>Imposibilidad de levantar el brazo desde una lesión.</translation>
    </message>
    <message>
        <source>Weakness, numbness or muscle wasting, getting worse from week to week.</source>
        <translation>Debilidad, adormecimiento o pérdida de músculo que empeora de semana en semana.</translation>
    </message>
    <message>
        <source>A hand that is swollen or shiny, or has changed colour.</source>
        <translation>Una mano hinchada o brillante, o que ha cambiado de color.</translation>
    </message>
    <message>
        <source>A hoarse voice or a cough that does not go away, or one hand getting thinner, especially in anyone who smokes or used to smoke.</source>
        <translation>Ronquera o tos que no se va, o una mano que se va quedando más delgada, sobre todo en quien fuma o ha fumado.</translation>
    </message>
    <message>
        <source>Rapid worsening, or several swollen joints.</source>
        <translation>Empeoramiento rápido, o varias articulaciones hinchadas.</translation>
    </message>
    <message>
        <source>Unable to lift the arm</source>
        <translation>Imposibilidad de levantar el brazo</translation>
    </message>
    <message>
        <source>Rapid worsening|several swollen joints</source>
        <translation>Empeoramiento rápido|varias articulaciones</translation>
    </message>
    <message>
        <source>A shoulder that has come out of its joint at some time.</source>
        <translation>Un hombro que se ha salido alguna vez.</translation>
    </message>
    <message>
        <source>A surgeon&apos;s advice to limit how the arm is moved.</source>
        <translation>Límites indicados por el cirujano para mover el brazo.</translation>
    </message>
    <message>
        <source>A recent injection, with the advice to rest the shoulder.</source>
        <translation>Una inyección reciente, con el consejo de dejar descansar el hombro.</translation>
    </message>
    <message>
        <source>Pain that comes on with moving the neck, or tingling below the elbow.</source>
        <translation>Dolor que aparece al mover el cuello, u hormigueo por debajo del codo.</translation>
    </message>
    <message>
        <source>A stroke or a nerve disease that affects the arm.</source>
        <translation>Un ictus o una enfermedad de los nervios que afecta al brazo.</translation>
    </message>
    <message>
        <source>A tendency to fall. One movement is done standing, with the back to the screen and nothing to hold on to.</source>
        <translation>Tendencia a caerse. Uno de los movimientos se hace de pie, de espaldas a la pantalla y sin nada a lo que agarrarse.</translation>
    </message>
    <message>
        <source>limit how the arm is moved</source>
        <translation>Límites indicados</translation>
    </message>
    <message>
        <source>recent injection</source>
        <translation>inyección reciente</translation>
    </message>
    <message>
        <source>tendency to fall</source>
        <translation>Tendencia a caerse</translation>
    </message>
    <message>
        <source>Please see a clinician within a few days.</source>
        <translation>Por favor, consulte con un profesional sanitario en unos días.</translation>
    </message>
    <message>
        <source>If it suddenly gets worse, call the emergency number.</source>
        <translation>Si empeora de repente, llame al número de emergencias.</translation>
    </message>
    <message>
        <source>If any of these apply, decide first whether the patient can be measured.</source>
        <translation>Si se cumple algo de esto, decida primero si se puede medir al paciente.</translation>
    </message>
    <message>
        <source>Can the patient be measured?</source>
        <translation>¿Se puede medir al paciente?</translation>
    </message>
    <message>
        <source>The patient would raise and turn the arm slowly, without help, and stop before it becomes painful.</source>
        <translation>El paciente levantaría y giraría el brazo despacio, sin ayuda, y pararía antes de que doliera.</translation>
    </message>
    <message>
        <source>Please have this looked into within a few days.</source>
        <translation>Haga que se examine esto en unos días.</translation>
    </message>
    <message>
        <source>Let the patient&apos;s arm rest.</source>
        <translation>Deje descansar el brazo del paciente.</translation>
    </message>
    <message>
        <source>The patient can be measured</source>
        <translation>Se puede medir al paciente</translation>
    </message>
    <message>
        <source>In an emergency, stop and call the emergency number.</source>
        <translation>En una emergencia, deje esto y llame al número de emergencias.</translation>
    </message>
    <message>
        <source>Do any of these apply right now?</source>
        <translation>¿Le ocurre algo de esto ahora?</translation>
    </message>
    <message>
        <source>An operation, a fracture, a dislocation or another injury of the shoulder within the last twelve weeks.</source>
        <translation>Una operación, una fractura, una luxación u otra lesión del hombro en las últimas doce semanas.</translation>
    </message>
    <message>
        <source>Let the arm rest.</source>
        <translation>Deje descansar el brazo.</translation>
    </message>
    <message>
        <source>Get help now.</source>
        <translation>Pida ayuda ahora.</translation>
    </message>
    <message>
        <source>Do not wait to see whether it passes. If you are unsure, call.</source>
        <translation>No espere a ver si se pasa. Si tiene dudas, llame.</translation>
    </message>
    <message>
        <source>Left side to the camera, arm hanging.</source>
        <translation>Lado izquierdo hacia la cámara, brazo colgando.</translation>
    </message>
    <message>
        <source>Back to the camera. Left hand behind you.</source>
        <translation>De espaldas a la cámara. Mano izquierda detrás.</translation>
    </message>
    <message>
        <source>Right side to the camera, arm hanging.</source>
        <translation>Lado derecho hacia la cámara, brazo colgando.</translation>
    </message>
    <message>
        <source>Back to the camera. Right hand behind you.</source>
        <translation>De espaldas a la cámara. Mano derecha detrás.</translation>
    </message>
    <message>
        <source>Slowly forwards and up. Stop before it becomes painful.</source>
        <translation>Despacio, hacia delante y arriba. Pare antes de que duela.</translation>
    </message>
    <message>
        <source>Slowly backwards. Stop before it becomes painful.</source>
        <translation>Despacio, hacia atrás. Pare antes de que duela.</translation>
    </message>
    <message>
        <source>Slowly sideways and up. Stop before it becomes painful.</source>
        <translation>Despacio, hacia el lado y arriba. Pare antes de que duela.</translation>
    </message>
    <message>
        <source>Forearm slowly outwards. Stop before it becomes painful.</source>
        <translation>Antebrazo despacio hacia fuera. Pare antes de que duela.</translation>
    </message>
    <message>
        <source>Slide the thumb slowly up. Stop before it becomes painful.</source>
        <translation>Suba el pulgar despacio. Pare antes de que duela.</translation>
    </message>
    <message>
        <source>Paused. Let the arm rest.</source>
        <translation>En pausa. Deje descansar el brazo.</translation>
    </message>
    <message>
        <source>Hold.</source>
        <translation>Mantenga la posición.</translation>
    </message>
    <message>
        <source>Slowly back.</source>
        <translation>Vuelva despacio.</translation>
    </message>
    <message>
        <source>Rest.</source>
        <translation>Descanse.</translation>
    </message>
    <message>
        <source>Stop before it becomes painful.</source>
        <translation>Pare antes de que duela.</translation>
    </message>
    <message>
        <source>{number}. Move slowly.</source>
        <translation>{number}. Mueva el brazo despacio.</translation>
    </message>
    <message>
        <source>Hold it there, gently.</source>
        <translation>Manténgalo ahí, con suavidad.</translation>
    </message>
    <message>
        <source>Let the arm come back.</source>
        <translation>Deje que el brazo vuelva.</translation>
    </message>
    <message>
        <source>One moment, please.</source>
        <translation>Un momento, por favor.</translation>
    </message>
    <message>
        <source>Done. Let the arm rest. How much did it hurt?</source>
        <translation>Listo. Deje descansar el brazo. ¿Cuánto dolió?</translation>
    </message>
    <message>
        <source>Done. Let the arm rest.</source>
        <translation>Listo. Deje descansar el brazo.</translation>
    </message>
    <message>
        <source>Not counted: {why}.</source>
        <translation>No cuenta: {why}.</translation>
    </message>
    <message>
        <source>Rest. Begin again when you are ready.</source>
        <translation>Descanse. Empiece otra vez cuando quiera.</translation>
    </message>
    <message>
        <source>Step back a little.</source>
        <translation>Retroceda un poco.</translation>
    </message>
    <message>
        <source>Come a little closer.</source>
        <translation>Acérquese un poco.</translation>
    </message>
    <message>
        <source>Step a little to your left.</source>
        <translation>Un paso hacia su izquierda.</translation>
    </message>
    <message>
        <source>Step a little to your right.</source>
        <translation>Un paso hacia su derecha.</translation>
    </message>
    <message>
        <source>Raise the screen.</source>
        <translation>Suba la pantalla.</translation>
    </message>
    <message>
        <source>Lower the screen.</source>
        <translation>Baje la pantalla.</translation>
    </message>
    <message>
        <source>The camera is tilted. Set it level.</source>
        <translation>La cámara está torcida. Póngala a nivel.</translation>
    </message>
    <message>
        <source>More light, please.</source>
        <translation>Más luz, por favor.</translation>
    </message>
    <message>
        <source>1 trial</source>
        <translation>1 intento</translation>
    </message>
    <message>
        <source>{number} trials</source>
        <translation>{number} intentos</translation>
    </message>
    <message>
        <source>another person followed</source>
        <translation>se siguió a otra persona</translation>
    </message>
    <message>
        <source>two people in view</source>
        <translation>hay dos personas a la vista</translation>
    </message>
    <message>
        <source>out of view while moving</source>
        <translation>fuera de la imagen al moverse</translation>
    </message>
    <message>
        <source>moved too fast</source>
        <translation>movimiento demasiado rápido</translation>
    </message>
    <message>
        <source>recording damaged</source>
        <translation>grabación dañada</translation>
    </message>
    <message>
        <source>picture on its side</source>
        <translation>imagen tumbada</translation>
    </message>
    <message>
        <source>wrong view</source>
        <translation>vista equivocada</translation>
    </message>
    <message>
        <source>faced the camera</source>
        <translation>de frente a la cámara</translation>
    </message>
    <message>
        <source>trunk oblique to the camera</source>
        <translation>tronco oblicuo a la cámara</translation>
    </message>
    <message>
        <source>body not turned halfway</source>
        <translation>cuerpo sin girar a medias</translation>
    </message>
    <message>
        <source>arm on the far side</source>
        <translation>brazo en el lado lejano</translation>
    </message>
    <message>
        <source>partly outside the picture</source>
        <translation>en parte fuera de la imagen</translation>
    </message>
    <message>
        <source>not clearly visible</source>
        <translation>no se ve con claridad</translation>
    </message>
    <message>
        <source>hand not behind the back</source>
        <translation>mano no está detrás de la espalda</translation>
    </message>
    <message>
        <source>arm length varied</source>
        <translation>longitud del brazo variable</translation>
    </message>
    <message>
        <source>sides mixed up</source>
        <translation>lados confundidos</translation>
    </message>
    <message>
        <source>elbow bent</source>
        <translation>codo doblado</translation>
    </message>
    <message>
        <source>elbow not at 90°</source>
        <translation>codo no a 90°</translation>
    </message>
    <message>
        <source>elbow away from the side</source>
        <translation>codo separado del costado</translation>
    </message>
    <message>
        <source>trunk leaned</source>
        <translation>tronco inclinado</translation>
    </message>
    <message>
        <source>trunk turned</source>
        <translation>tronco girado</translation>
    </message>
    <message>
        <source>arm out of the picture’s plane</source>
        <translation>brazo fuera del plano de la imagen</translation>
    </message>
    <message>
        <source>shoulder rose</source>
        <translation>hombro elevado</translation>
    </message>
    <message>
        <source>other arm raised</source>
        <translation>otro brazo levantado</translation>
    </message>
    <message>
        <source>did not face the camera first</source>
        <translation>sin ponerse antes de frente a la cámara</translation>
    </message>
    <message>
        <source>forearm not straight ahead at the start</source>
        <translation>antebrazo no hacia delante al empezar</translation>
    </message>
    <message>
        <source>no rest at the start</source>
        <translation>sin reposo al empezar</translation>
    </message>
    <message>
        <source>no such movement</source>
        <translation>no hay ese movimiento</translation>
    </message>
    <message>
        <source>no still hold</source>
        <translation>sin pausa quieta</translation>
    </message>
    <message>
        <source>unsteady hold</source>
        <translation>pausa inestable</translation>
    </message>
    <message>
        <source>analyses disagreed</source>
        <translation>los análisis discrepan</translation>
    </message>
    <message>
        <source>impossible value</source>
        <translation>valor imposible</translation>
    </message>
    <message>
        <source>too uncertain</source>
        <translation>demasiado incierto</translation>
    </message>
    <message>
        <source>trials differed</source>
        <translation>los intentos difieren</translation>
    </message>
    <message>
        <source>lost from view</source>
        <translation>se perdió de vista</translation>
    </message>
    <message>
        <source>move more slowly and stay upright</source>
        <translation>muévase más despacio y erguido</translation>
    </message>
    <message>
        <source>damaged pictures</source>
        <translation>imágenes dañadas</translation>
    </message>
    <message>
        <source>out of the picture</source>
        <translation>fuera de la imagen</translation>
    </message>
    <message>
        <source>left and right mixed up</source>
        <translation>izquierda y derecha confundidas</translation>
    </message>
    <message>
        <source>the elbow was not at 90°</source>
        <translation>el codo no estaba a 90°</translation>
    </message>
    <message>
        <source>face the camera first, then turn</source>
        <translation>primero de frente, luego gire</translation>
    </message>
    <message>
        <source>no movement seen</source>
        <translation>no se vio movimiento</translation>
    </message>
    <message>
        <source>not seen clearly enough</source>
        <translation>no se ve con claridad</translation>
    </message>
    <message>
        <source>no one in view</source>
        <translation>no se ve a nadie</translation>
    </message>
    <message>
        <source>Left arm now.</source>
        <translation>Ahora, brazo izquierdo.</translation>
    </message>
    <message>
        <source>Right arm now.</source>
        <translation>Ahora, brazo derecho.</translation>
    </message>
    <message>
        <source>Rest your arm while the result is calculated.</source>
        <translation>Descanse el brazo mientras se calcula el resultado.</translation>
    </message>
    <message>
        <source>Lower the arm. What was captured is being calculated.</source>
        <translation>Baje el brazo. Se está calculando lo registrado.</translation>
    </message>
    <message>
        <source>The light is behind you. Move the light or close a blind.</source>
        <translation>La luz está detrás de usted. Mueva la luz o baje una persiana.</translation>
    </message>
    <message>
        <source>someone else in view</source>
        <translation>hay otra persona a la vista</translation>
    </message>
    <message>
        <source>too few pictures per second</source>
        <translation>pocas imágenes por segundo</translation>
    </message>
    <message>
        <source>head not above the hips</source>
        <translation>la cabeza no está sobre las caderas</translation>
    </message>
    <message>
        <source>stand as the drawing shows</source>
        <translation>colóquese como en el dibujo</translation>
    </message>
    <message>
        <source>turn your back to the camera</source>
        <translation>dé la espalda a la cámara</translation>
    </message>
    <message>
        <source>turn squarely to the camera</source>
        <translation>póngase de lleno hacia la cámara</translation>
    </message>
    <message>
        <source>turn halfway to the side</source>
        <translation>gire hasta quedar medio de lado</translation>
    </message>
    <message>
        <source>turn your other side to the camera</source>
        <translation>ponga el otro costado hacia la cámara</translation>
    </message>
    <message>
        <source>arm or hips not seen clearly</source>
        <translation>brazo o caderas mal visibles</translation>
    </message>
    <message>
        <source>hand not seen behind the back</source>
        <translation>no se ve la mano en la espalda</translation>
    </message>
    <message>
        <source>arm not seen reliably</source>
        <translation>el brazo no se ve con seguridad</translation>
    </message>
    <message>
        <source>the elbow was bent</source>
        <translation>el codo estaba doblado</translation>
    </message>
    <message>
        <source>the elbow moved from your side</source>
        <translation>el codo se separó del costado</translation>
    </message>
    <message>
        <source>the body leaned</source>
        <translation>el cuerpo se inclinó</translation>
    </message>
    <message>
        <source>the body turned</source>
        <translation>el cuerpo giró</translation>
    </message>
    <message>
        <source>the arm moved out of line</source>
        <translation>el brazo se desvió</translation>
    </message>
    <message>
        <source>the shoulder hitched up</source>
        <translation>el hombro se elevó</translation>
    </message>
    <message>
        <source>the other arm was raised too</source>
        <translation>el otro brazo también estaba levantado</translation>
    </message>
    <message>
        <source>begin with the forearm straight ahead</source>
        <translation>empiece con el antebrazo hacia delante</translation>
    </message>
    <message>
        <source>no rest before the movement</source>
        <translation>sin reposo antes del movimiento</translation>
    </message>
    <message>
        <source>hardly any movement</source>
        <translation>apenas hubo movimiento</translation>
    </message>
    <message>
        <source>not still for a second</source>
        <translation>no estuvo quieto un segundo</translation>
    </message>
    <message>
        <source>not quite still</source>
        <translation>no estuvo del todo quieto</translation>
    </message>
    <message>
        <source>more than a shoulder can do</source>
        <translation>más de lo que puede un hombro</translation>
    </message>
    <message>
        <source>too uncertain to use</source>
        <translation>demasiado incierto para servir</translation>
    </message>
    <message>
        <source>Move more slowly.</source>
        <translation>Muévase más despacio.</translation>
    </message>
    <message>
        <source>Stand as the drawing shows.</source>
        <translation>Colóquese como en el dibujo.</translation>
    </message>
    <message>
        <source>Turn your back to the camera.</source>
        <translation>Dé la espalda a la cámara.</translation>
    </message>
    <message>
        <source>Turn squarely to the camera.</source>
        <translation>Alinee el cuerpo con la cámara.</translation>
    </message>
    <message>
        <source>Turn halfway to the side.</source>
        <translation>Gire a medias hacia un lado.</translation>
    </message>
    <message>
        <source>Turn your other side to the camera.</source>
        <translation>Ponga el otro lado hacia la cámara.</translation>
    </message>
    <message>
        <source>Elbow straight, gently.</source>
        <translation>Codo recto, sin forzar.</translation>
    </message>
    <message>
        <source>Elbow at a right angle.</source>
        <translation>Codo en ángulo recto.</translation>
    </message>
    <message>
        <source>Elbow at your side.</source>
        <translation>Codo junto al cuerpo.</translation>
    </message>
    <message>
        <source>Stay upright.</source>
        <translation>Siga erguido.</translation>
    </message>
    <message>
        <source>Keep your chest still.</source>
        <translation>No gire el pecho.</translation>
    </message>
    <message>
        <source>Keep the arm in line.</source>
        <translation>Brazo en línea.</translation>
    </message>
    <message>
        <source>Keep the shoulder low.</source>
        <translation>Hombro bajo.</translation>
    </message>
    <message>
        <source>Rest the other arm.</source>
        <translation>Baje el otro brazo.</translation>
    </message>
    <message>
        <source>Next time: {advice}</source>
        <translation>La próxima vez: {advice}</translation>
    </message>
    <message>
        <source>Thawline may not use the camera. Allow it in the privacy settings.</source>
        <translation>Thawline no tiene permiso para usar la cámara. Concédalo en los ajustes de privacidad.</translation>
    </message>
    <message>
        <source>Another program is using the camera. Close that program.</source>
        <translation>Otro programa está usando la cámara. Cierre ese programa.</translation>
    </message>
    <message>
        <source>This camera is not connected. Plug it in or choose another.</source>
        <translation>Esta cámara no está conectada. Conéctela o elija otra.</translation>
    </message>
    <message>
        <source>Something went wrong. Try again.</source>
        <translation>Algo ha fallado. Inténtelo de nuevo.</translation>
    </message>
    <message>
        <source>Close video calls and other camera programs.</source>
        <translation>Cierre las videollamadas y otros programas de cámara.</translation>
    </message>
    <message>
        <source>If none is open, unplug the camera, then plug it in.</source>
        <translation>Si no hay ninguno abierto, desconecte la cámara y vuelva a conectarla.</translation>
    </message>
    <message>
        <source>Check the plug at the camera and at the computer.</source>
        <translation>Revise el conector de la cámara y el del ordenador.</translation>
    </message>
    <message>
        <source>Or choose another camera under Set-up.</source>
        <translation>O elija otra cámara en Preparación.</translation>
    </message>
    <message>
        <source>Wait until the camera&apos;s light comes on.</source>
        <translation>Espere a que se encienda la luz de la cámara.</translation>
    </message>
    <message>
        <source>Check whether something is covering the lens.</source>
        <translation>Compruebe si algo tapa la lente.</translation>
    </message>
    <message>
        <source>Switch on a light.</source>
        <translation>Encienda una luz.</translation>
    </message>
    <message>
        <source>Switch on a light: in the dark a camera takes fewer pictures.</source>
        <translation>Encienda una luz: a oscuras, la cámara toma menos imágenes.</translation>
    </message>
    <message>
        <source>Unplug other cameras.</source>
        <translation>Desconecte otras cámaras.</translation>
    </message>
    <message>
        <source>Unplug the camera.</source>
        <translation>Desconecte la cámara.</translation>
    </message>
    <message>
        <source>Wait a moment, then plug it in again.</source>
        <translation>Espere un momento y vuelva a conectarla.</translation>
    </message>
    <message>
        <source>Open Settings from the menu.</source>
        <translation>Abra Ajustes en el menú.</translation>
    </message>
    <message>
        <source>Choose Body tracking and download it.</source>
        <translation>Elija Seguimiento del cuerpo y descárguelo.</translation>
    </message>
    <message>
        <source>Wait a few seconds.</source>
        <translation>Espere unos segundos.</translation>
    </message>
    <message>
        <source>Close other large programs.</source>
        <translation>Cierre otros programas grandes.</translation>
    </message>
    <message>
        <source>Close this window and start Thawline again.</source>
        <translation>Cierre esta ventana y vuelva a abrir Thawline.</translation>
    </message>
    <message>
        <source>Unplug the camera and plug it in again.</source>
        <translation>Desconecte la cámara y vuelva a conectarla.</translation>
    </message>
    <message>
        <source>If that does not help, start Thawline again.</source>
        <translation>Si no sirve, vuelva a abrir Thawline.</translation>
    </message>
    <message>
        <source>it ended before anything was captured</source>
        <translation>terminó antes de registrar nada</translation>
    </message>
    <message>
        <source>{task}: no reading, {why}.</source>
        <translation>{task}: sin lectura, {why}.</translation>
    </message>
    <message>
        <source>{task}: pain {pain} of 10, no reading.</source>
        <translation>{task}: dolor {pain} de 10, sin lectura.</translation>
    </message>
    <message>
        <source>That is all. Thank you.</source>
        <translation>Eso es todo. Gracias.</translation>
    </message>
    <message>
        <source>too few trials</source>
        <translation>pocos intentos</translation>
    </message>
    <message>
        <source>Lower the arm. You will be asked about the pain.</source>
        <translation>Baje el brazo. Se le preguntará por el dolor.</translation>
    </message>
    <message>
        <source>the trials differ</source>
        <translation>los intentos difieren</translation>
    </message>
    <message>
        <source>The arm is not still yet. Hold the position for a second, then press H again.</source>
        <translation>El brazo aún no está quieto. Mantenga la posición un segundo y vuelva a pulsar H.</translation>
    </message>
    <message>
        <source>The camera was unplugged. Plug it in again.</source>
        <translation>La cámara se desconectó. Vuelva a conectarla.</translation>
    </message>
    <message>
        <source>The picture is black. Open the camera&apos;s cover or add light.</source>
        <translation>La imagen está negra. Abra la tapa de la cámara o dé más luz.</translation>
    </message>
    <message>
        <source>The camera is slow. Add light, or unplug other cameras.</source>
        <translation>La cámara va lenta. Dé más luz o desconecte otras cámaras.</translation>
    </message>
    <message>
        <source>The camera image has frozen. Unplug the camera and plug it in again.</source>
        <translation>La imagen de la cámara se ha detenido. Desconecte la cámara y vuelva a conectarla.</translation>
    </message>
    <message>
        <source>This clip cannot be played. Choose another.</source>
        <translation>Esta grabación no se puede reproducir. Elija otra.</translation>
    </message>
    <message>
        <source>The clip has ended.</source>
        <translation>La grabación ha terminado.</translation>
    </message>
    <message>
        <source>Body tracking is missing. Download it under Settings.</source>
        <translation>Falta el seguimiento del cuerpo. Descárguelo en Ajustes.</translation>
    </message>
    <message>
        <source>One moment: body tracking is starting again.</source>
        <translation>Un momento: el seguimiento del cuerpo está arrancando de nuevo.</translation>
    </message>
    <message>
        <source>Body tracking could not start. Close the window and try again.</source>
        <translation>El seguimiento del cuerpo no ha podido arrancar. Cierre la ventana e inténtelo de nuevo.</translation>
    </message>
    <message>
        <source>Distance: not seen yet</source>
        <translation>Distancia: todavía no se ve</translation>
    </message>
    <message>
        <source>Distance: good</source>
        <translation>Distancia: bien</translation>
    </message>
    <message>
        <source>Height and level: not seen yet</source>
        <translation>Altura y nivel: todavía no se ve</translation>
    </message>
    <message>
        <source>Height and level: good</source>
        <translation>Altura y nivel: bien</translation>
    </message>
    <message>
        <source>Light: not seen yet</source>
        <translation>Luz: todavía no se ve</translation>
    </message>
    <message>
        <source>Light: good</source>
        <translation>Luz: bien</translation>
    </message>
    <message>
        <source>Distance: too close</source>
        <translation>Distancia: demasiado cerca</translation>
    </message>
    <message>
        <source>Distance: too far away</source>
        <translation>Distancia: demasiado lejos</translation>
    </message>
    <message>
        <source>Distance: not in the middle</source>
        <translation>Distancia: no está en el centro</translation>
    </message>
    <message>
        <source>Height: no room above your head</source>
        <translation>Altura: falta espacio sobre la cabeza</translation>
    </message>
    <message>
        <source>Height: your hips are below the line</source>
        <translation>Altura: las caderas quedan por debajo de la línea</translation>
    </message>
    <message>
        <source>Level: tilted</source>
        <translation>Nivel: inclinada</translation>
    </message>
    <message>
        <source>Light: too dark</source>
        <translation>Luz: demasiado oscuro</translation>
    </message>
    <message>
        <source>Light: from behind you</source>
        <translation>Luz: le llega por detrás</translation>
    </message>
    <message>
        <source>Raise the screen. Put books under it.</source>
        <translation>Suba la pantalla. Póngale libros debajo.</translation>
    </message>
    <message>
        <source>Lower the screen. Use a lower table.</source>
        <translation>Baje la pantalla. Use una mesa más baja.</translation>
    </message>
    <message>
        <source>More light, please. Switch on a lamp.</source>
        <translation>Más luz, por favor. Encienda una lámpara.</translation>
    </message>
    <message>
        <source>Raise your left hand.</source>
        <translation>Levante la mano izquierda.</translation>
    </message>
    <message>
        <source>✓  The hand was seen on its own side. Left and right are correct.</source>
        <translation>✓  La mano se vio en su lado. La izquierda y la derecha son correctas.</translation>
    </message>
    <message>
        <source>✓  The camera shows a mirror image. From now on Thawline corrects this.</source>
        <translation>✓  La cámara muestra una imagen de espejo. A partir de ahora Thawline lo corrige.</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Claro</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Oscuro</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Ajustes</translation>
    </message>
    <message>
        <source>{percent} %</source>
        <translation>{percent} %</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>Tamaño del texto</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Colores</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>Same as the system</source>
        <translation>Como el sistema</translation>
    </message>
    <message>
        <source>Read each sentence aloud</source>
        <translation>Leer cada frase en voz alta</translation>
    </message>
    <message>
        <source>Play tones</source>
        <translation>Reproducir tonos</translation>
    </message>
    <message>
        <source>Test the voice</source>
        <translation>Probar la voz</translation>
    </message>
    <message>
        <source>Test the tones</source>
        <translation>Probar los tonos</translation>
    </message>
    <message>
        <source>Check the camera</source>
        <translation>Comprobar la cámara</translation>
    </message>
    <message>
        <source>Voice</source>
        <translation>Voz</translation>
    </message>
    <message>
        <source>Tones</source>
        <translation>Tonos</translation>
    </message>
    <message>
        <source>People and data</source>
        <translation>Personas y datos</translation>
    </message>
    <message>
        <source>You should hear this sentence now.</source>
        <translation>Ahora debería oír una frase.</translation>
    </message>
    <message>
        <source>No voice was found on this computer. Every sentence is on the screen too.</source>
        <translation>No se encontró ninguna voz en este ordenador. Todas las frases aparecen también en la pantalla.</translation>
    </message>
    <message>
        <source>This is the voice that speaks while you measure.</source>
        <translation>Esta es la voz que habla durante la medición.</translation>
    </message>
    <message>
        <source>You should hear two falling notes now. They mean that a trial was captured.</source>
        <translation>Ahora debería oír dos notas descendentes. Significan que se captó un intento.</translation>
    </message>
    <message>
        <source>No sound output was found on this computer.</source>
        <translation>No se encontró ninguna salida de sonido en este ordenador.</translation>
    </message>
    <message>
        <source>No camera was found</source>
        <translation>No se encontró ninguna cámara</translation>
    </message>
    <message>
        <source>Movement, side</source>
        <translation>Movimiento, lado</translation>
    </message>
    <message>
        <source>First days</source>
        <translation>Primeros días</translation>
    </message>
    <message>
        <source>Last days</source>
        <translation>Últimos días</translation>
    </message>
    <message>
        <source>Other side, deficit</source>
        <translation>Otro lado, déficit</translation>
    </message>
    <message>
        <source>Verdict, change per month</source>
        <translation>Resultado, cambio al mes</translation>
    </message>
    <message>
        <source>Brackets: 95 % intervals. Drawings: upright line, last days; box, their interval; ring, first days.</source>
        <translation>Entre paréntesis, intervalos del 95 %. Dibujos: línea vertical, últimos días; caja, su intervalo; círculo, primeros días.</translation>
    </message>
    <message>
        <source>A trend needs at least {weeks} weeks and {days} days with readings.</source>
        <translation>Una tendencia necesita al menos {weeks} semanas y {days} días con lecturas.</translation>
    </message>
    <message>
        <source>Trends of the {side} side are counted from {day} ({why}).</source>
        <translation>Las tendencias del lado {side} se cuentan desde el {day} ({why}).</translation>
    </message>
    <message>
        <source>Before and after, by fitted lines</source>
        <translation>Antes y después, según líneas ajustadas</translation>
    </message>
    <message>
        <source>Per month before</source>
        <translation>Al mes, antes</translation>
    </message>
    <message>
        <source>Per month after</source>
        <translation>Al mes, después</translation>
    </message>
    <message>
        <source>Yes: even the lower end of the intervals of the last days is enough. Not shown: it is not enough, which says nothing about what the person can do. Few days: fewer than {days} days with a reading in the last weeks.</source>
        <translation>Sí: basta incluso el extremo inferior de los intervalos de los últimos días. No demostrado: no basta, lo que no dice nada de lo que puede hacer la persona. Pocos días: menos de {days} días con una lectura en las últimas semanas.</translation>
    </message>
    <message>
        <source>All {count} measurements gave a reading.</source>
        <translation>Las {count} mediciones dieron una lectura.</translation>
    </message>
    <message>
        <source>The only measurement gave a reading.</source>
        <translation>La única medición dio una lectura.</translation>
    </message>
    <message>
        <source>{refused} of {count} measurements gave no reading: no reading is safer than a wrong one. First reasons:</source>
        <translation>{refused} de {count} mediciones no dieron lectura: es más seguro no dar ninguna que dar una errónea. Primeros motivos:</translation>
    </message>
    <message>
        <source>The only measurement gave no reading: no reading is safer than a wrong one. First reason:</source>
        <translation>La única medición no dio ninguna lectura: ninguna lectura es más segura que una errónea. Primer motivo:</translation>
    </message>
    <message>
        <source>secondary</source>
        <translation>secundario</translation>
    </message>
    <message>
        <source>not comparable yet</source>
        <translation>aún sin comparar</translation>
    </message>
    <message>
        <source>not measured {day}</source>
        <translation>sin lectura el {day}</translation>
    </message>
    <message>
        <source>Both shoulders changed together, the other by {amount}: has the set-up changed?</source>
        <translation>Ambos hombros cambiaron a la vez, el otro {amount}: ¿ha cambiado la colocación?</translation>
    </message>
    <message>
        <source>{change}, probably no more: new</source>
        <translation>{change}, probablemente no más: es reciente</translation>
    </message>
    <message>
        <source>Overall change</source>
        <translation>Cambio total</translation>
    </message>
    <message>
        <source>Change since</source>
        <translation>Cambio desde entonces</translation>
    </message>
    <message>
        <source>At once</source>
        <translation>De inmediato</translation>
    </message>
    <message>
        <source>*: too few days yet, so this is mostly what is usual.</source>
        <translation>*: aún hay muy pocos días, por lo que es sobre todo lo habitual.</translation>
    </message>
    <message>
        <source>{movement} from {range}</source>
        <translation>{movement} desde {range}</translation>
    </message>
    <message>
        <source>Range usually enough to</source>
        <translation>Amplitud que suele bastar para</translation>
    </message>
    <message>
        <source>too early to say</source>
        <translation>todavía es pronto para saberlo</translation>
    </message>
    <message>
        <source>{count} days to {day}</source>
        <translation>{count} días, al {day}</translation>
    </message>
    <message>
        <source>deficit {amount}</source>
        <translation>déficit {amount}</translation>
    </message>
    <message>
        <source>{share} of it</source>
        <translation>{share} de él</translation>
    </message>
    <message>
        <source>not measured</source>
        <translation>sin medir</translation>
    </message>
    <message>
        <source>few days</source>
        <translation>pocos días</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>sí</translation>
    </message>
    <message>
        <source>not shown</source>
        <translation>no demostrado</translation>
    </message>
    <message>
        <source>no clear change</source>
        <translation>sin cambio claro</translation>
    </message>
    <message>
        <source>{change} a month</source>
        <translation>{change} al mes</translation>
    </message>
    <message>
        <source>{value} ({range})</source>
        <translation>{value} ({range})</translation>
    </message>
    <message>
        <source>not chosen</source>
        <translation>sin elegir</translation>
    </message>
    <message>
        <source>Not chosen</source>
        <translation>Sin elegir</translation>
    </message>
    <message>
        <source>Saved for {person}, {day}</source>
        <translation>Guardado para {person}, {day}</translation>
    </message>
    <message>
        <source>Left out</source>
        <translation>Descartada</translation>
    </message>
    <message>
        <source>Not measured</source>
        <translation>Sin medir</translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Medida</translation>
    </message>
    <message>
        <source>In the queue</source>
        <translation>En cola</translation>
    </message>
    <message>
        <source>Being read</source>
        <translation>En lectura</translation>
    </message>
    <message>
        <source>Waiting</source>
        <translation>Pendiente</translation>
    </message>
    <message>
        <source>Needs an answer</source>
        <translation>Falta una respuesta</translation>
    </message>
    <message>
        <source>{number} of {total} trials kept by you</source>
        <translation>{number} de {total} intentos conservados por usted</translation>
    </message>
    <message>
        <source>Choose movement and side</source>
        <translation>Elija movimiento y lado</translation>
    </message>
    <message>
        <source>{low} to {high}</source>
        <translation>{low} a {high}</translation>
    </message>
    <message>
        <source>{change} a month, not certain enough to call it a change.</source>
        <translation>{change} al mes, sin certeza suficiente para llamarlo un cambio.</translation>
    </message>
    <message>
        <source>It could be more movement or less: {change} a month.</source>
        <translation>Puede ser más movimiento o menos: {change} al mes.</translation>
    </message>
    <message>
        <source>{side}, from {first} to {last}, then {why}: {verdict}</source>
        <translation>{side}, del {first} al {last}, después {why}: {verdict}</translation>
    </message>
    <message>
        <source>{line}, {change} a month.</source>
        <translation>{line}, {change} al mes.</translation>
    </message>
    <message>
        <source>{side}, after exercises: {change} compared with before ({pairs} pairs of sessions).</source>
        <translation>{side}, después de los ejercicios: {change} en comparación con antes ({pairs} pares de sesiones).</translation>
    </message>
    <message>
        <source>This is the effect in the hour after exercises, not a change over weeks.</source>
        <translation>Es el efecto en la hora siguiente a los ejercicios, no un cambio a lo largo de semanas.</translation>
    </message>
    <message>
        <source>Days with exercises logged: {week} in the last week, {month} in the last four weeks.</source>
        <translation>Días con ejercicios anotados: {week} en la última semana, {month} en las últimas cuatro semanas.</translation>
    </message>
    <message>
        <source>The readings of both shoulders moved the same way, so the set-up may have changed, and no change a month is shown.</source>
        <translation>Las lecturas de ambos hombros variaron en el mismo sentido; quizá cambió la colocación, y no se muestra ningún cambio al mes.</translation>
    </message>
    <message>
        <source>“Levelled off” still holds: as measured, the gain is below {gain} a month.</source>
        <translation>«Estabilizado» sigue valiendo: según lo medido, la mejora es inferior a {gain} al mes.</translation>
    </message>
    <message>
        <source>{side} arm: enough movement to {tasks}.</source>
        <translation>{side}: movimiento suficiente para {tasks}.</translation>
    </message>
    <message>
        <source>no number</source>
        <translation>sin número</translation>
    </message>
    <message>
        <source>value over time</source>
        <translation>valor a lo largo del tiempo</translation>
    </message>
    <message>
        <source>{number}: not counted</source>
        <translation>{number}: no contada</translation>
    </message>
    <message>
        <source>{number}: discarded</source>
        <translation>{number}: descartado</translation>
    </message>
    <message>
        <source>Active, goniometer</source>
        <translation>Activa, goniómetro</translation>
    </message>
    <message>
        <source>Passive, goniometer</source>
        <translation>Pasiva, goniómetro</translation>
    </message>
    <message>
        <source>camera: {value}</source>
        <translation>cámara: {value}</translation>
    </message>
    <message>
        <source>degrees</source>
        <translation>grados</translation>
    </message>
    <message>
        <source>Passive is less than active. Is that right?</source>
        <translation>El valor pasivo es menor que el activo. ¿Es correcto?</translation>
    </message>
    <message>
        <source>Possible: {low} to {high}. Correct it or clear it.</source>
        <translation>Posible: de {low} a {high}. Corríjalo o bórrelo.</translation>
    </message>
    <message>
        <source>a made-up example of a chart</source>
        <translation>un ejemplo inventado de gráfico</translation>
    </message>
    <message>
        <source>A made-up example</source>
        <translation>Un ejemplo inventado</translation>
    </message>
    <message>
        <source>Your results will appear here.</source>
        <translation>Sus resultados aparecerán aquí.</translation>
    </message>
    <message>
        <source>After four weeks and eight sessions you see whether the shoulder moves more.</source>
        <translation>Tras cuatro semanas y ocho sesiones se ve si el hombro se mueve más.</translation>
    </message>
    <message>
        <source>Two or three sessions a week are enough. One reading can be wrong by several degrees, so a single session says little.</source>
        <translation>Dos o tres sesiones por semana bastan. Una lectura puede desviarse varios grados, así que una sola sesión dice poco.</translation>
    </message>
    <message>
        <source>Each session adds a mark for each arm. The ribbon shows the likely course.</source>
        <translation>Cada sesión añade una marca por brazo. La banda muestra la evolución probable.</translation>
    </message>
    <message>
        <source>level</source>
        <translation>nivel</translation>
    </message>
    <message>
        <source>turn, {side}</source>
        <translation>giro, {side}</translation>
    </message>
    <message>
        <source>drawing: {movement}, {side} arm</source>
        <translation>dibujo: {movement}, brazo {side}</translation>
    </message>
    <message>
        <source>drawing: {what}, {side} arm</source>
        <translation>dibujo: {what}, brazo {side}</translation>
    </message>
    <message>
        <source>hand raised</source>
        <translation>mano levantada</translation>
    </message>
    <message>
        <source>drawing from above</source>
        <translation>dibujo desde arriba</translation>
    </message>
    <message>
        <source>camera</source>
        <translation>cámara</translation>
    </message>
    <message>
        <source>Trial {number}: {words}</source>
        <translation>Intento {number}: {words}</translation>
    </message>
    <message>
        <source>next</source>
        <translation>siguiente</translation>
    </message>
    <message>
        <source>done</source>
        <translation>terminada</translation>
    </message>
    <message>
        <source>Practice: {words}</source>
        <translation>Práctica: {words}</translation>
    </message>
    <message>
        <source>being calculated</source>
        <translation>calculándose</translation>
    </message>
    <message>
        <source>No picture yet</source>
        <translation>Aún no hay imagen</translation>
    </message>
    <message>
        <source>camera picture</source>
        <translation>imagen de la cámara</translation>
    </message>
    <message>
        <source>head about here</source>
        <translation>la cabeza, más o menos aquí</translation>
    </message>
    <message>
        <source>head</source>
        <translation>cabeza</translation>
    </message>
    <message>
        <source>hips above this line</source>
        <translation>caderas sobre esta línea</translation>
    </message>
    <message>
        <source>An estimate, not a diagnosis. Stop before it becomes painful.</source>
        <translation>Es una estimación, no un diagnóstico. Pare antes de que duela.</translation>
    </message>
    <message>
        <source>arm forwards and up</source>
        <translation>brazo hacia delante y arriba</translation>
    </message>
    <message>
        <source>arm backwards</source>
        <translation>brazo hacia atrás</translation>
    </message>
    <message>
        <source>arm sideways and up</source>
        <translation>brazo hacia el lado y arriba</translation>
    </message>
    <message>
        <source>forearm outwards</source>
        <translation>antebrazo hacia fuera</translation>
    </message>
    <message>
        <source>thumb up the back</source>
        <translation>pulgar espalda arriba</translation>
    </message>
    <message>
        <source>left</source>
        <translation>izquierdo</translation>
    </message>
    <message>
        <source>right</source>
        <translation>derecho</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Izquierdo</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Derecho</translation>
    </message>
    <message>
        <source>Both</source>
        <translation>Ambos</translation>
    </message>
    <message>
        <source>Came on gradually</source>
        <translation>Poco a poco</translation>
    </message>
    <message>
        <source>An injury</source>
        <translation>Una lesión</translation>
    </message>
    <message>
        <source>An operation</source>
        <translation>Una operación</translation>
    </message>
    <message>
        <source>The arm was kept still</source>
        <translation>El brazo estuvo inmovilizado</translation>
    </message>
    <message>
        <source>Under 40</source>
        <translation>Menos de 40</translation>
    </message>
    <message>
        <source>40 to 49</source>
        <translation>De 40 a 49</translation>
    </message>
    <message>
        <source>50 to 59</source>
        <translation>De 50 a 59</translation>
    </message>
    <message>
        <source>60 to 69</source>
        <translation>De 60 a 69</translation>
    </message>
    <message>
        <source>70 or over</source>
        <translation>70 o más</translation>
    </message>
    <message>
        <source>{movement}, {side} arm</source>
        <translation>{movement}, brazo {side}</translation>
    </message>
    <message>
        <source>No pain rating</source>
        <translation>Dolor sin valorar</translation>
    </message>
    <message>
        <source>Therapy started or changed</source>
        <translation>Terapia nueva o cambiada</translation>
    </message>
    <message>
        <source>Camera changed or moved</source>
        <translation>Cámara cambiada o movida</translation>
    </message>
    <message>
        <source>Body tracking changed</source>
        <translation>Cambio del seguimiento del cuerpo</translation>
    </message>
    <message>
        <source>without help</source>
        <translation>sin ayuda</translation>
    </message>
    <message>
        <source>{posture}, {help}</source>
        <translation>{posture}, {help}</translation>
    </message>
    <message>
        <source>Pain</source>
        <translation>Dolor</translation>
    </message>
    <message>
        <source>Pain left</source>
        <translation>Dolor izq.</translation>
    </message>
    <message>
        <source>Pain right</source>
        <translation>Dolor dcho.</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Stopped by</source>
        <translation>Detenido por</translation>
    </message>
    <message>
        <source>Pain L / R</source>
        <translation>Dolor I / D</translation>
    </message>
    <message>
        <source>{reading}, practice</source>
        <translation>{reading}, práctica</translation>
    </message>
    <message>
        <source>Clip</source>
        <translation>Grabación</translation>
    </message>
    <message>
        <source>Result</source>
        <translation>Resultado</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notas</translation>
    </message>
    <message>
        <source>Side</source>
        <translation>Lado</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Table: {title}</source>
        <translation>Tabla: {title}</translation>
    </message>
    <message>
        <source>Practice</source>
        <translation>Práctica</translation>
    </message>
    <message>
        <source>Stiffness</source>
        <translation>Rigidez</translation>
    </message>
    <message>
        <source>Weakness</source>
        <translation>Debilidad</translation>
    </message>
    <message>
        <source>Hydrodilatation</source>
        <translation>Hidrodilatación</translation>
    </message>
    <message>
        <source>Manipulation under anaesthesia</source>
        <translation>Movilización bajo anestesia</translation>
    </message>
    <message>
        <source>Capsular release</source>
        <translation>Liberación capsular</translation>
    </message>
    <message>
        <source>Another procedure</source>
        <translation>Otra intervención</translation>
    </message>
    <message>
        <source>Something else</source>
        <translation>Otra cosa</translation>
    </message>
    <message>
        <source>An estimate, not a diagnosis.</source>
        <translation>Es una estimación, no un diagnóstico.</translation>
    </message>
    <message>
        <source>Injection</source>
        <translation>Infiltración</translation>
    </message>
    <message>
        <source>Flare</source>
        <translation>Brote</translation>
    </message>
    <message>
        <source>Therapy began</source>
        <translation>Empezó una terapia</translation>
    </message>
    <message>
        <source>Therapy ended</source>
        <translation>Terminó una terapia</translation>
    </message>
    <message>
        <source>Home programme changed</source>
        <translation>Cambió el programa en casa</translation>
    </message>
    <message>
        <source>Medicine changed</source>
        <translation>Cambió la medicación</translation>
    </message>
    <message>
        <source>Clinic visit</source>
        <translation>Visita clínica</translation>
    </message>
    <message>
        <source>injection</source>
        <translation>infiltración</translation>
    </message>
    <message>
        <source>manipulation</source>
        <translation>movilización</translation>
    </message>
    <message>
        <source>release</source>
        <translation>liberación</translation>
    </message>
    <message>
        <source>procedure</source>
        <translation>intervención</translation>
    </message>
    <message>
        <source>flare</source>
        <translation>brote</translation>
    </message>
    <message>
        <source>therapy</source>
        <translation>terapia</translation>
    </message>
    <message>
        <source>programme</source>
        <translation>programa</translation>
    </message>
    <message>
        <source>medicine</source>
        <translation>medicación</translation>
    </message>
    <message>
        <source>visit</source>
        <translation>visita</translation>
    </message>
    <message>
        <source>tracking</source>
        <translation>seguimiento</translation>
    </message>
    <message>
        <source>other</source>
        <translation>otro</translation>
    </message>
    <message>
        <source>camera changed</source>
        <translation>cambio de cámara</translation>
    </message>
    <message>
        <source>model changed</source>
        <translation>cambio de modelo</translation>
    </message>
    <message>
        <source>noted</source>
        <translation>anotado</translation>
    </message>
    <message>
        <source>helped by the other hand</source>
        <translation>con ayuda de la otra mano</translation>
    </message>
    <message>
        <source>helped by a stick</source>
        <translation>con ayuda de un bastón</translation>
    </message>
    <message>
        <source>helped by a pulley</source>
        <translation>con ayuda de una polea</translation>
    </message>
    <message>
        <source>Not done yet</source>
        <translation>Aún sin hacer</translation>
    </message>
    <message>
        <source>Done already</source>
        <translation>Ya hechos</translation>
    </message>
    <message>
        <source>standing</source>
        <translation>de pie</translation>
    </message>
    <message>
        <source>sitting</source>
        <translation>sentado</translation>
    </message>
    <message>
        <source>{band}, most likely {region}</source>
        <translation>{band}, lo más probable {region}</translation>
    </message>
    <message>
        <source>Between the shoulder blades</source>
        <translation>Entre los omóplatos</translation>
    </message>
    <message>
        <source>About the lower end of the shoulder blade</source>
        <translation>A la altura del extremo inferior del omóplato</translation>
    </message>
    <message>
        <source>About the lower ribs</source>
        <translation>A la altura de las costillas inferiores</translation>
    </message>
    <message>
        <source>About the waist</source>
        <translation>A la altura de la cintura</translation>
    </message>
    <message>
        <source>Below the waist</source>
        <translation>Por debajo de la cintura</translation>
    </message>
    <message>
        <source>About the base of the spine</source>
        <translation>A la altura de la base de la columna</translation>
    </message>
    <message>
        <source>Buttock</source>
        <translation>Nalga</translation>
    </message>
    <message>
        <source>Thigh</source>
        <translation>Muslo</translation>
    </message>
    <message>
        <source>No reading. </source>
        <translation>Sin lectura. </translation>
    </message>
    <message>
        <source>{band}, {low} to {high}</source>
        <translation>{band}, de {low} a {high}</translation>
    </message>
    <message>
        <source>No reading.</source>
        <translation>Sin lectura.</translation>
    </message>
    <message>
        <source>Not counted. </source>
        <translation>No cuenta. </translation>
    </message>
    <message>
        <source>Not counted.</source>
        <translation>No cuenta.</translation>
    </message>
    <message>
        <source>Flexion</source>
        <translation>Flexión</translation>
    </message>
    <message>
        <source>Extension</source>
        <translation>Extensión</translation>
    </message>
    <message>
        <source>Abduction</source>
        <translation>Abducción</translation>
    </message>
    <message>
        <source>External rotation at the side</source>
        <translation>Rotación externa con el codo al costado</translation>
    </message>
    <message>
        <source>Hand behind back</source>
        <translation>Mano a la espalda</translation>
    </message>
    <message>
        <source>front</source>
        <translation>de frente</translation>
    </message>
    <message>
        <source>back</source>
        <translation>de espaldas</translation>
    </message>
    <message>
        <source>oblique</source>
        <translation>oblicua</translation>
    </message>
    <message>
        <source>upper thoracic</source>
        <translation>dorsal alta</translation>
    </message>
    <message>
        <source>mid thoracic</source>
        <translation>dorsal media</translation>
    </message>
    <message>
        <source>lower thoracic</source>
        <translation>dorsal baja</translation>
    </message>
    <message>
        <source>upper lumbar</source>
        <translation>lumbar alta</translation>
    </message>
    <message>
        <source>lower lumbar</source>
        <translation>lumbar baja</translation>
    </message>
    <message>
        <source>sacrum</source>
        <translation>sacro</translation>
    </message>
    <message>
        <source>buttock</source>
        <translation>nalga</translation>
    </message>
    <message>
        <source>pelvis</source>
        <translation>pelvis</translation>
    </message>
    <message>
        <source>halfway</source>
        <translation>a medio camino</translation>
    </message>
    <message>
        <source>outwards</source>
        <translation>hacia fuera</translation>
    </message>
    <message>
        <source>waist</source>
        <translation>cintura</translation>
    </message>
    <message>
        <source>lower ribs</source>
        <translation>costillas inferiores</translation>
    </message>
    <message>
        <source>hip</source>
        <translation>cadera</translation>
    </message>
    <message>
        <source>behind</source>
        <translation>detrás</translation>
    </message>
    <message>
        <source>head height</source>
        <translation>altura de la cabeza</translation>
    </message>
    <message>
        <source>overhead</source>
        <translation>sobre la cabeza</translation>
    </message>
    <message>
        <source>shoulder</source>
        <translation>hombro</translation>
    </message>
    <message>
        <source>lowest rib</source>
        <translation>última costilla</translation>
    </message>
    <message>
        <source>shoulder blade</source>
        <translation>omóplato</translation>
    </message>
    <message>
        <source>straight ahead</source>
        <translation>al frente</translation>
    </message>
    <message>
        <source>straight out</source>
        <translation>hacia fuera</translation>
    </message>
    <message>
        <source>arm hanging</source>
        <translation>brazo colgando</translation>
    </message>
    <message>
        <source>straight back</source>
        <translation>hacia atrás</translation>
    </message>
    <message>
        <source>shoulder height</source>
        <translation>altura del hombro</translation>
    </message>
    <message>
        <source>straight up</source>
        <translation>vertical</translation>
    </message>
    <message>
        <source>thigh</source>
        <translation>muslo</translation>
    </message>
    <message>
        <source>reach a shelf at shoulder height</source>
        <translation>llegar a un estante a la altura del hombro</translation>
    </message>
    <message>
        <source>reach a shelf above the head</source>
        <translation>llegar a un estante por encima de la cabeza</translation>
    </message>
    <message>
        <source>lift the arm sideways to shoulder height</source>
        <translation>levantar el brazo de lado hasta la altura del hombro</translation>
    </message>
    <message>
        <source>reach up sideways, as to a high hook</source>
        <translation>llegar arriba de lado, como a un gancho alto</translation>
    </message>
    <message>
        <source>reach a back pocket</source>
        <translation>llegar a un bolsillo trasero</translation>
    </message>
    <message>
        <source>reach the waistband behind</source>
        <translation>llegar por detrás a la cintura</translation>
    </message>
    <message>
        <source>tuck a shirt in behind</source>
        <translation>meterse la camisa por detrás</translation>
    </message>
    <message>
        <source>fasten a strap behind the back</source>
        <translation>abrocharse una tira a la espalda</translation>
    </message>
    <message>
        <source>Table slide forwards</source>
        <translation>Deslizamiento en la mesa hacia delante</translation>
    </message>
    <message>
        <source>Table slide sideways</source>
        <translation>Deslizamiento en la mesa hacia el lado</translation>
    </message>
    <message>
        <source>Pendulum</source>
        <translation>Péndulo</translation>
    </message>
    <message>
        <source>Wall walk</source>
        <translation>Dedos por la pared</translation>
    </message>
    <message>
        <source>External rotation at a fixed handle</source>
        <translation>Rotación externa en un asa fija</translation>
    </message>
    <message>
        <source>Internal rotation at a fixed handle</source>
        <translation>Rotación interna en un asa fija</translation>
    </message>
    <message>
        <source>Front of the shoulder at a fixed handle</source>
        <translation>Parte delantera del hombro en un asa fija</translation>
    </message>
    <message>
        <source>Arm behind the back at a fixed handle</source>
        <translation>Brazo detrás de la espalda en un asa fija</translation>
    </message>
    <message>
        <source>Cross-body stretch</source>
        <translation>Estiramiento cruzado</translation>
    </message>
    <message>
        <source>Towel stretch</source>
        <translation>Estiramiento con toalla</translation>
    </message>
    <message>
        <source>Sit side-on to a table, hand on a cloth, and let it slide away from your side.</source>
        <translation>Siéntese de lado a una mesa con la mano sobre un paño y deje que se deslice alejándose del costado.</translation>
    </message>
    <message>
        <source>Lean on the other hand, let the arm hang and let it swing in small circles.</source>
        <translation>Apóyese en la otra mano, deje colgar el brazo y deje que se balancee en círculos pequeños.</translation>
    </message>
    <message>
        <source>Elbow bent at your side, hold a fixed handle and turn your body away from the hand.</source>
        <translation>Con el codo doblado junto al costado, agarre un asa fija y gire el cuerpo alejándolo de la mano.</translation>
    </message>
    <message>
        <source>Elbow bent at your side, hold a fixed handle and turn your body towards the hand.</source>
        <translation>Con el codo doblado junto al costado, agarre un asa fija y gire el cuerpo hacia la mano.</translation>
    </message>
    <message>
        <source>Hold a fixed handle at elbow height and walk away from it, so that the arm stays behind you.</source>
        <translation>Agarre un asa fija a la altura del codo y aléjese de ella caminando, de modo que el brazo quede detrás.</translation>
    </message>
    <message>
        <source>Hold a fixed handle and turn your body away from it, so that the arm goes behind your back.</source>
        <translation>Agarre un asa fija y gire el cuerpo alejándolo de ella, de modo que el brazo pase por detrás de la espalda.</translation>
    </message>
    <message>
        <source>1 repetition</source>
        <translation>1 repetición</translation>
    </message>
    <message>
        <source>{count} repetitions</source>
        <translation>{count} repeticiones</translation>
    </message>
    <message>
        <source>{count} times a day</source>
        <translation>{count} veces al día</translation>
    </message>
    <message>
        <source>held for {count} s</source>
        <translation>se mantiene {count} s</translation>
    </message>
    <message>
        <source>both sides</source>
        <translation>ambos lados</translation>
    </message>
    <message>
        <source>{count} partly done</source>
        <translation>{count} en parte</translation>
    </message>
    <message>
        <source>hydrodilatation</source>
        <translation>hidrodilatación</translation>
    </message>
    <message>
        <source>manipulation under anaesthesia</source>
        <translation>movilización bajo anestesia</translation>
    </message>
    <message>
        <source>capsular release</source>
        <translation>liberación capsular</translation>
    </message>
    <message>
        <source>therapy begun or changed</source>
        <translation>terapia nueva o cambiada</translation>
    </message>
    <message>
        <source>therapy began</source>
        <translation>empezó una terapia</translation>
    </message>
    <message>
        <source>therapy ended</source>
        <translation>terminó una terapia</translation>
    </message>
    <message>
        <source>home programme changed</source>
        <translation>cambió el programa en casa</translation>
    </message>
    <message>
        <source>medicine changed</source>
        <translation>cambió la medicación</translation>
    </message>
    <message>
        <source>clinic visit</source>
        <translation>visita clínica</translation>
    </message>
    <message>
        <source>way of measuring changed</source>
        <translation>cambio en la forma de medir</translation>
    </message>
    <message>
        <source>no recent readings</source>
        <translation>sin lecturas recientes</translation>
    </message>
    <message>
        <source>about {levels} levels, {change} cm</source>
        <translation>unos {levels} niveles, {change} cm</translation>
    </message>
    <message>
        <source>{movement}, {side} side: readings went down over {weeks} weeks, by {value} ({low} to {high}) a month, 95 % interval in brackets.</source>
        <translation>{movement}, lado {side}: las lecturas bajaron durante {weeks} semanas, {value} (de {low} a {high}) al mes, con el intervalo del 95 % entre paréntesis.</translation>
    </message>
    <message>
        <source>was level</source>
        <translation>se mantuvo</translation>
    </message>
    <message>
        <source>External rotation</source>
        <translation>Rotación externa</translation>
    </message>
    <message>
        <source>{before} until about {day} ({low} to {high}); since then: {now}</source>
        <translation>{before} hasta alrededor del {day} (del {low} al {high}); desde entonces: {now}</translation>
    </message>
    <message>
        <source>sudden loss of {amount} from {day} on; since then: {now}</source>
        <translation>pérdida repentina de {amount} a partir del {day}; desde entonces: {now}</translation>
    </message>
    <message>
        <source>{verdict}, shown since {day}</source>
        <translation>{verdict}, así desde el {day}</translation>
    </message>
    <message>
        <source>too early to say; it takes four weeks and eight sessions</source>
        <translation>todavía es pronto para saberlo; hacen falta cuatro semanas y ocho sesiones</translation>
    </message>
    <message>
        <source>Change: {changes}.</source>
        <translation>Cambio: {changes}.</translation>
    </message>
    <message>
        <source>{change} since the clinic visit on {day}</source>
        <translation>{change} desde la visita clínica del {day}</translation>
    </message>
    <message>
        <source>counted since {day}</source>
        <translation>cuenta desde el {day}</translation>
    </message>
    <message>
        <source>clear over the whole time, not in the last weeks</source>
        <translation>claro en todo el tiempo, no en las últimas semanas</translation>
    </message>
    <message>
        <source>{share} % nearer</source>
        <translation>un {share} % más cerca</translation>
    </message>
    <message>
        <source>{share} % farther away</source>
        <translation>un {share} % más lejos</translation>
    </message>
    <message>
        <source>turned by {angle}°</source>
        <translation>girada {angle}°</translation>
    </message>
    <message>
        <source>leaning by {angle}°</source>
        <translation>inclinada {angle}°</translation>
    </message>
    <message>
        <source>not even a steady gain of {gain} a month would show within half a year.</source>
        <translation>ni siquiera una mejora constante de {gain} al mes se notaría en medio año.</translation>
    </message>
    <message>
        <source>{gain} a month in about {weeks} weeks</source>
        <translation>{gain} al mes, dentro de unas {weeks} semanas</translation>
    </message>
    <message>
        <source>{gain} a month in about a week</source>
        <translation>{gain} al mes, dentro de una semana más o menos</translation>
    </message>
    <message>
        <source>{gain} a month by now</source>
        <translation>{gain} al mes, ya ahora</translation>
    </message>
    <message>
        <source>{gain} a month not within half a year</source>
        <translation>{gain} al mes, no en medio año</translation>
    </message>
    <message>
        <source>{day} {month} {year}</source>
        <translation>{day} {month} {year}</translation>
    </message>
    <message>
        <source>Jan</source>
        <translation>ene</translation>
    </message>
    <message>
        <source>Feb</source>
        <translation>feb</translation>
    </message>
    <message>
        <source>Mar</source>
        <translation>mar</translation>
    </message>
    <message>
        <source>Apr</source>
        <translation>abr</translation>
    </message>
    <message>
        <source>May</source>
        <translation>may</translation>
    </message>
    <message>
        <source>Jun</source>
        <translation>jun</translation>
    </message>
    <message>
        <source>Jul</source>
        <translation>jul</translation>
    </message>
    <message>
        <source>Aug</source>
        <translation>ago</translation>
    </message>
    <message>
        <source>Sep</source>
        <translation>sept</translation>
    </message>
    <message>
        <source>Oct</source>
        <translation>oct</translation>
    </message>
    <message>
        <source>Nov</source>
        <translation>nov</translation>
    </message>
    <message>
        <source>Dec</source>
        <translation>dic</translation>
    </message>
    <message>
        <source>{amount} less than the other side</source>
        <translation>{amount} menos que el otro lado</translation>
    </message>
    <message>
        <source>{amount} more than the other side</source>
        <translation>{amount} más que el otro lado</translation>
    </message>
    <message>
        <source>{words}, which may be chance</source>
        <translation>{words}, lo que puede ser casualidad</translation>
    </message>
    <message>
        <source>{value}° ({low} to {high})</source>
        <translation>{value}° ({low} a {high})</translation>
    </message>
    <message>
        <source>{value} % ({low} to {high})</source>
        <translation>{value} % ({low} a {high})</translation>
    </message>
    <message>
        <source>{share} of its range</source>
        <translation>{share} de su amplitud</translation>
    </message>
    <message>
        <source>{share} of its height above the hips</source>
        <translation>{share} de su altura sobre las caderas</translation>
    </message>
    <message>
        <source>{first}; {second}</source>
        <translation>{first}; {second}</translation>
    </message>
    <message>
        <source>{movement}, {side}: {words}.</source>
        <translation>{movement}, {side}: {words}.</translation>
    </message>
    <message>
        <source>{month} {year} {share}</source>
        <translation>{month} {year} {share}</translation>
    </message>
    <message>
        <source>Pain and exercises</source>
        <translation>Dolor y ejercicios</translation>
    </message>
    <message>
        <source>“{words}”</source>
        <translation>«{words}»</translation>
    </message>
    <message>
        <source>The person asks</source>
        <translation>La persona pregunta</translation>
    </message>
    <message>
        <source>Since {day}</source>
        <translation>Desde el {day}</translation>
    </message>
    <message>
        <source>Since the clinic visit on {day}</source>
        <translation>Desde la consulta del {day}</translation>
    </message>
    <message>
        <source>Since the first sessions</source>
        <translation>Desde las primeras sesiones</translation>
    </message>
    <message>
        <source>{movements}: not comparable, {why}</source>
        <translation>{movements}: no comparables, {why}</translation>
    </message>
    <message>
        <source>not comparable: {why}</source>
        <translation>no comparable: {why}</translation>
    </message>
    <message>
        <source>too few sessions so far</source>
        <translation>muy pocas sesiones hasta ahora</translation>
    </message>
    <message>
        <source>first measured later</source>
        <translation>se midió por primera vez después</translation>
    </message>
    <message>
        <source>only practice before</source>
        <translation>antes solo hubo práctica</translation>
    </message>
    <message>
        <source>too few sessions since</source>
        <translation>muy pocas sesiones desde entonces</translation>
    </message>
    <message>
        <source>Share of the other side</source>
        <translation>Proporción del otro lado</translation>
    </message>
    <message>
        <source>the other side was not measured.</source>
        <translation>el otro lado no se midió.</translation>
    </message>
    <message>
        <source>Worst pain in 24 hours was not rated in the last two weeks.</source>
        <translation>En las últimas dos semanas no se valoró el peor dolor en 24 horas.</translation>
    </message>
    <message>
        <source>nothing was measured on an affected side.</source>
        <translation>no se midió nada en un lado afectado.</translation>
    </message>
    <message>
        <source>Last days, share of the other side</source>
        <translation>Últimos días, proporción del otro lado</translation>
    </message>
    <message>
        <source>Compared with the other side</source>
        <translation>Comparado con el otro lado</translation>
    </message>
    <message>
        <source>Points to check</source>
        <translation>Conviene revisar</translation>
    </message>
    <message>
        <source>Since the latest event, {day} ({what})</source>
        <translation>Desde el último acontecimiento, {day} ({what})</translation>
    </message>
    <message>
        <source>no readings before and after that can be compared.</source>
        <translation>sin lecturas de antes y después que se puedan comparar.</translation>
    </message>
    <message>
        <source>{change}, {verdict}</source>
        <translation>{change}, {verdict}</translation>
    </message>
    <message>
        <source>{change} since {day}, {verdict}</source>
        <translation>{change} desde el {day}, {verdict}</translation>
    </message>
    <message>
        <source>The session&apos;s note keeps the earlier number.</source>
        <translation>La nota de la sesión conserva el número anterior.</translation>
    </message>
    <message>
        <source>Pain at rest</source>
        <translation>Dolor en reposo</translation>
    </message>
    <message>
        <source>Pain the night before</source>
        <translation>Dolor de la noche anterior</translation>
    </message>
    <message>
        <source>Worst pain in 24 hours</source>
        <translation>Peor dolor en 24 horas</translation>
    </message>
    <message>
        <source>At rest</source>
        <translation>En reposo</translation>
    </message>
    <message>
        <source>The night before</source>
        <translation>La noche anterior</translation>
    </message>
    <message>
        <source>Worst in 24 hours</source>
        <translation>El peor en 24 horas</translation>
    </message>
    <message>
        <source>Before the session</source>
        <translation>Antes de la sesión</translation>
    </message>
    <message>
        <source>During the movements</source>
        <translation>Durante los movimientos</translation>
    </message>
    <message>
        <source>Correct pain: {day}</source>
        <translation>Corregir el dolor: {day}</translation>
    </message>
    <message>
        <source>{task}: {reading}</source>
        <translation>{task}: {reading}</translation>
    </message>
    <message>
        <source>{task}: pain</source>
        <translation>{task}: dolor</translation>
    </message>
    <message>
        <source>Change a number first</source>
        <translation>Cambie primero un número</translation>
    </message>
    <message>
        <source>{movement}, {side}</source>
        <translation>{movement}, {side}</translation>
    </message>
    <message>
        <source>{movement} {share}</source>
        <translation>{movement} {share}</translation>
    </message>
    <message>
        <source>both shoulders are affected, so there is none to compare with.</source>
        <translation>ambos hombros están afectados, así que no hay con cuál comparar.</translation>
    </message>
    <message>
        <source>no affected side was named.</source>
        <translation>no se indicó ningún lado afectado.</translation>
    </message>
    <message>
        <source>the other side was not measured in the same way.</source>
        <translation>el otro lado no se midió de la misma manera.</translation>
    </message>
    <message>
        <source>Worst pain in 24 hours about {now} of 10.</source>
        <translation>Peor dolor en 24 horas: unos {now} de 10.</translation>
    </message>
    <message>
        <source>Worst pain in 24 hours about {now} of 10, before it was {then}.</source>
        <translation>Peor dolor en 24 horas: unos {now} de 10; antes, {then}.</translation>
    </message>
    <message>
        <source>No exercises were logged.</source>
        <translation>No se anotaron ejercicios.</translation>
    </message>
    <message>
        <source>Exercises were logged on one day.</source>
        <translation>Se anotaron ejercicios un día.</translation>
    </message>
    <message>
        <source>Exercises were logged on {count} days.</source>
        <translation>Se anotaron ejercicios en {count} días.</translation>
    </message>
    <message>
        <source>Thawline found none.</source>
        <translation>Thawline no encontró nada.</translation>
    </message>
    <message>
        <source>{month} {year} {times}</source>
        <translation>{month} {year} {times}</translation>
    </message>
    <message>
        <source>{what} {count} of {total}</source>
        <translation>{what} {count} de {total}</translation>
    </message>
    <message>
        <source>stiffness</source>
        <translation>rigidez</translation>
    </message>
    <message>
        <source>weakness</source>
        <translation>debilidad</translation>
    </message>
    <message>
        <source>something else</source>
        <translation>otra cosa</translation>
    </message>
    <message>
        <source>{whole}.{decimals}</source>
        <translation>{whole},{decimals}</translation>
    </message>
    <message>
        <source>Left shoulder: {parts}</source>
        <translation>Hombro izquierdo: {parts}</translation>
    </message>
    <message>
        <source>Right shoulder: {parts}</source>
        <translation>Hombro derecho: {parts}</translation>
    </message>
    <message>
        <source>steady in {movements}</source>
        <translation>estable en {movements}</translation>
    </message>
    <message>
        <source>no clear change in {movements}</source>
        <translation>ningún cambio claro en {movements}</translation>
    </message>
    <message>
        <source>too early to say for {movements}</source>
        <translation>aún es pronto para decir algo de {movements}</translation>
    </message>
    <message>
        <source>no recent readings of {movements}</source>
        <translation>sin lecturas recientes de {movements}</translation>
    </message>
    <message>
        <source>no readings in the last three weeks, so nothing can be said of today</source>
        <translation>sin lecturas en las últimas tres semanas, así que no se puede decir nada de hoy</translation>
    </message>
    <message>
        <source>You went out of view during the movement. Move slowly, stay upright and stay in the picture.</source>
        <translation>Se le perdió de vista durante el movimiento. Muévase despacio, manténgase erguido y no salga de la imagen.</translation>
    </message>
    <message>
        <source>There were too few pictures per second. Add light or choose a smaller picture.</source>
        <translation>Había muy pocas imágenes por segundo. Añada luz o elija una imagen más pequeña.</translation>
    </message>
    <message>
        <source>Your shoulder, arm or hips could not be seen clearly. Move anything that covers them, and wear close-fitting clothes.</source>
        <translation>El hombro, el brazo o las caderas no se veían bien. Aparte lo que los tape y use ropa ajustada.</translation>
    </message>
    <message>
        <source>The calculated value is more than a shoulder can do. Check that the movement and side are right, and stand as the drawing shows.</source>
        <translation>El valor calculado es más de lo que puede un hombro. Compruebe que el movimiento y el lado son los correctos, y colóquese como en el dibujo.</translation>
    </message>
    <message>
        <source>Not yet proven: the interval of this number does not include 0, but a verdict needs more evidence, because the readings are checked every week.</source>
        <translation>Aún sin demostrar: el intervalo de este número no incluye el 0, pero un resultado necesita más pruebas, porque las lecturas se revisan cada semana.</translation>
    </message>
    <message>
        <source>gained earlier; lately less than {gain} a month</source>
        <translation>mejoró antes; últimamente menos de {gain} al mes</translation>
    </message>
    <message>
        <source>certain when first shown; too little evidence against it since then</source>
        <translation>seguro cuando se mostró; desde entonces, pocas pruebas en contra</translation>
    </message>
    <message>
        <source>not yet certain: a verdict needs more than 95 %</source>
        <translation>aún no es seguro: un resultado exige más del 95 %</translation>
    </message>
    <message>
        <source>The person now stands {how} compared with the first readings, which may change a reading by about {effect}. Go back to the old place, or add “camera changed” as an event.</source>
        <translation>La persona está ahora {how} respecto a las primeras lecturas, lo que puede cambiar una lectura en torno a {effect}. Vuelva al lugar de antes o añada «cambio de cámara» como acontecimiento.</translation>
    </message>
    <message>
        <source>{movement}, compared with the other side, by month: {months}.</source>
        <translation>{movement}, en comparación con el otro lado, por mes: {months}.</translation>
    </message>
    <message>
        <source>Range compared with the other side, 95 % interval in brackets: {shares}.</source>
        <translation>Amplitud en comparación con el otro lado, entre paréntesis el intervalo del 95 %: {shares}.</translation>
    </message>
    <message>
        <source>It is lowest for {movement}.</source>
        <translation>La más baja es la de {movement}.</translation>
    </message>
    <message>
        <source>Each range in brackets combines those of both sides&apos; readings. These are facts about movement, not a diagnosis.</source>
        <translation>Cada intervalo entre paréntesis combina los de las lecturas de ambos lados. Son datos sobre el movimiento, no un diagnóstico.</translation>
    </message>
    <message>
        <source>What stopped the movements, as reported: {months}.</source>
        <translation>Qué detuvo los movimientos, según la persona: {months}.</translation>
    </message>
    <message>
        <source>Angles are active motion of the arm against the trunk as one camera sees it. They are not the passive range of the joint, and they cannot replace a goniometer&apos;s readings.</source>
        <translation>Los ángulos son el movimiento activo del brazo respecto al tronco, tal como lo ve una sola cámara. No son la amplitud pasiva de la articulación ni sustituyen las lecturas de un goniómetro.</translation>
    </message>
    <message>
        <source>A reading is the median of a session&apos;s trials. Its interval, in brackets, is about what the person could do that day and is meant to contain the true value in 19 of 20 readings. For flexion and abduction this was checked against angles marked in photographs of real people; for the other movements on virtual people only. Most of the width is the same for every reading of one person with one set-up, so changes are more certain than single values: their interval counts only the scatter from day to day.</source>
        <translation>Una lectura es la mediana de los intentos de una sesión. Su intervalo, entre paréntesis, se refiere a lo que la persona podía hacer ese día y está pensado para contener el valor verdadero en 19 de cada 20 lecturas. En flexión y abducción se comprobó con ángulos marcados en fotografías de personas reales; en los demás movimientos, solo con personas virtuales. La mayor parte de la anchura es igual en todas las lecturas de una persona con la misma colocación, así que los cambios se conocen mejor que los valores aislados: su intervalo recoge solo la variación de un día a otro.</translation>
    </message>
    <message>
        <source>First and last readings are medians of up to five days, without the two practice sessions of each set-up. Their change covers the whole time, and its interval applies to that change alone (pointwise). From four weeks and eight days with readings on, a verdict is sought every week, with a line through at most 16 weeks that unusual days hardly affect. Because the readings are checked so often, a verdict needs more evidence than a 95 % interval. So “no clear change” may appear beside an interval without 0, and “probably” may still be chance. In simulations, a few people in 100 with no real change were shown one within twelve weeks. The line starts again after a turn, and where the way of measuring changed or something happened to the shoulder. Secondary movements need more evidence. Three weeks after the last reading, a verdict no longer applies.</source>
        <translation>Las primeras y las últimas lecturas son medianas de hasta cinco días, sin las dos sesiones de práctica de cada colocación. Su cambio abarca todo el tiempo y su intervalo vale solo para ese cambio (puntual). A partir de cuatro semanas y ocho días con lecturas, cada semana se busca un resultado con una línea por 16 semanas como máximo, que los días raros apenas mueven. Como las lecturas se revisan tantas veces, un resultado exige más pruebas que un intervalo del 95 %. Por eso «sin cambio claro» puede figurar junto a un intervalo sin el 0, y «probablemente» aún puede ser casualidad. En simulaciones, a unas pocas de cada 100 personas sin ningún cambio real se les mostró uno en doce semanas. La línea empieza de nuevo tras un giro, y donde cambió la forma de medir o le ocurrió algo al hombro. Los movimientos secundarios exigen más pruebas. Tres semanas después de la última lectura, un resultado ya no vale.</translation>
    </message>
    <message>
        <source>Other side: the last days of both; the deficit is how far this side falls short. Its interval combines those of both sides&apos; readings.</source>
        <translation>Otro lado: los últimos días de ambos; el déficit es lo que le falta a este lado. Su intervalo combina los de las lecturas de ambos lados.</translation>
    </message>
    <message>
        <source>“Levelled off” means that a gain of 5° a month is unlikely while this side still moves less than the other. It is missed more often than it is wrong.</source>
        <translation>«Estabilizado» significa que una mejoría de 5° al mes es poco probable mientras este lado aún se mueve menos que el otro. Pasa inadvertido más veces de las que es erróneo.</translation>
    </message>
    <message>
        <source>The limits for trends, everyday tasks and prompts are Thawline&apos;s own. No physiotherapist has confirmed them yet.</source>
        <translation>Los límites de tendencias, tareas y avisos son propios de Thawline. Ningún fisioterapeuta los ha confirmado todavía.</translation>
    </message>
    <message>
        <source>began in another way</source>
        <translation>empezó de otro modo</translation>
    </message>
    <message>
        <source>{movement} seen from the front at an angle</source>
        <translation>{movement} vista en diagonal desde delante</translation>
    </message>
    <message>
        <source>{movement}, {side}: one low reading, measure again</source>
        <translation>{movement}, {side}: una lectura baja, conviene medir otra vez</translation>
    </message>
    <message>
        <source>a lot of pain at rest or at night</source>
        <translation>mucho dolor en reposo o por la noche</translation>
    </message>
    <message>
        <source>little or no recent change in {movements}</source>
        <translation>poco o ningún cambio reciente en {movements}</translation>
    </message>
    <message>
        <source>{first}.</source>
        <translation>{first}.</translation>
    </message>
    <message>
        <source>people, bodies, places, sessions, notes, cameras</source>
        <translation>personas, medidas del cuerpo, posiciones, sesiones, notas y cámaras</translation>
    </message>
    <message>
        <source>latest changes to it</source>
        <translation>sus últimos cambios</translation>
    </message>
    <message>
        <source>its lock, while it is open</source>
        <translation>su bloqueo, mientras está abierto</translation>
    </message>
    <message>
        <source>copies made before updates</source>
        <translation>copias hechas antes de las actualizaciones</translation>
    </message>
    <message>
        <source>lengths and marks of people&apos;s bodies</source>
        <translation>longitudes y marcas del cuerpo de las personas</translation>
    </message>
    <message>
        <source>cameras&apos; lenses, nothing about people</source>
        <translation>lentes de las cámaras, nada sobre personas</translation>
    </message>
    <message>
        <source>how cameras are turned, nothing about people</source>
        <translation>inclinación de las cámaras, nada sobre personas</translation>
    </message>
    <message>
        <source>corrections from studies, nothing about people</source>
        <translation>correcciones de estudios, nada sobre personas</translation>
    </message>
    <message>
        <source>settings of the window, days of the safety questions</source>
        <translation>ajustes de la ventana y días de las preguntas de seguridad</translation>
    </message>
    <message>
        <source>logs, without readings, names or notes</source>
        <translation>registros de funcionamiento, sin lecturas, nombres ni notas</translation>
    </message>
    <message>
        <source>sessions before a backup was restored</source>
        <translation>sesiones anteriores a la restauración de una copia de seguridad</translation>
    </message>
    <message>
        <source>another file of this program or of yours</source>
        <translation>otro archivo de este programa o suyo</translation>
    </message>
    <message>
        <source>{path} has no column {missing}. Its first line must name the columns {columns}, separated by commas.</source>
        <translation>A {path} le falta la columna {missing}. La primera línea debe nombrar las columnas {columns}, separadas por comas.</translation>
    </message>
    <message>
        <source>The clip {clip} is stored online and is not on this computer yet. Make it available offline first.</source>
        <translation>La grabación {clip} está guardada en línea y todavía no está en este ordenador. Antes, haga que esté disponible sin conexión.</translation>
    </message>
    <message>
        <source>The body lengths are from {day}, more than {most} days ago. Measure them again.</source>
        <translation>Las longitudes del cuerpo son del {day}, de hace más de {most} días. Mídalas otra vez.</translation>
    </message>
    <message>
        <source>The marks are from {day}, more than {most} days ago. Measure them again.</source>
        <translation>Las marcas son del {day}, de hace más de {most} días. Mídalas otra vez.</translation>
    </message>
    <message>
        <source>The shoulders look wider against the trunk than when they were measured. Is this the right person, facing the camera?</source>
        <translation>Los hombros parecen más anchos respecto al tronco que cuando se midieron. ¿Es la persona correcta, de frente a la cámara?</translation>
    </message>
    <message>
        <source>The shoulders look narrower against the trunk than when they were measured. Is this the right person, facing the camera?</source>
        <translation>Los hombros parecen más estrechos respecto al tronco que cuando se midieron. ¿Es la persona correcta, de frente a la cámara?</translation>
    </message>
    <message>
        <source>The camera&apos;s level is from {day}; measure it again.</source>
        <translation>El nivel de la cámara es del {day}; mídalo otra vez.</translation>
    </message>
    <message>
        <source>The result would be too uncertain to be of use. Try closer-fitting clothes, more light or a plainer background. If the trials differed, go to the same point each time; if a goniometer study of your own scatters widely, repeat it.</source>
        <translation>El resultado sería demasiado incierto para ser útil. Pruebe con ropa más ajustada, más luz o un fondo más liso. Si los intentos difirieron, llegue cada vez al mismo punto; si un estudio propio con goniómetro tiene mucha dispersión, repítalo.</translation>
    </message>
    <message>
        <source>reach up high, as to the top of a cupboard</source>
        <translation>llegar muy arriba, como a lo alto de un armario</translation>
    </message>
    <message>
        <source>bring the elbow back, as into a coat sleeve</source>
        <translation>llevar el codo atrás, como para ponerse un abrigo</translation>
    </message>
    <message>
        <source>slide a door aside, elbow at the side</source>
        <translation>abrir una puerta corredera, con el codo pegado al costado</translation>
    </message>
    <message>
        <source>take something that stands beside you, elbow at the side</source>
        <translation>tomar algo que está al lado, con el codo pegado al costado</translation>
    </message>
    <message>
        <source>Measure again on another day.</source>
        <translation>Vuelva a medir otro día.</translation>
    </message>
    <message>
        <source>edges</source>
        <translation>bordes</translation>
    </message>
    <message>
        <source>{first} and {second}</source>
        <translation>{first} y {second}</translation>
    </message>
    <message>
        <source>Face the camera, arms down, thumbs out.</source>
        <translation>De frente a la cámara, brazos abajo, pulgares hacia fuera.</translation>
    </message>
    <message>
        <source>Face the camera, then turn half right. Forearm ahead.</source>
        <translation>De frente; luego gire un poco a la derecha. Antebrazo recto.</translation>
    </message>
    <message>
        <source>Face the camera, then turn half left. Forearm ahead.</source>
        <translation>De frente; luego gire un poco a la izquierda. Antebrazo recto.</translation>
    </message>
    <message>
        <source>The 95 % interval is based on pictures of real people, marked by hand.</source>
        <translation>El intervalo del 95 % se basa en imágenes de personas reales, marcadas a mano.</translation>
    </message>
    <message>
        <source>The 95 % interval is based on virtual people, with an allowance for real ones.</source>
        <translation>El intervalo del 95 % se basa en personas virtuales, con un margen añadido para las reales.</translation>
    </message>
    <message>
        <source>The 95 % interval is based on your own goniometer study, or on the errors measured earlier where these were larger.</source>
        <translation>El intervalo del 95 % se basa en su propio estudio con goniómetro, o en los errores medidos antes cuando estos fueron mayores.</translation>
    </message>
    <message>
        <source>Exercises since {day}: {exercises}.</source>
        <translation>Ejercicios desde el {day}: {exercises}.</translation>
    </message>
    <message>
        <source>{exercise} {done} of {planned} planned</source>
        <translation>{exercise}, {done} de {planned} previstos</translation>
    </message>
    <message>
        <source>{minutes} min at end range</source>
        <translation>{minutes} min al final del recorrido</translation>
    </message>
    <message>
        <source>under 1 min at end range</source>
        <translation>menos de 1 min al final del recorrido</translation>
    </message>
    <message>
        <source>1 logged without repetitions</source>
        <translation>1 anotado sin repeticiones</translation>
    </message>
    <message>
        <source>{count} logged without repetitions</source>
        <translation>{count} anotados sin repeticiones</translation>
    </message>
    <message>
        <source>{words} ({more})</source>
        <translation>{words} ({more})</translation>
    </message>
    <message>
        <source>Minutes at end range are the repetitions logged times the planned hold, on each side. Where no repetitions were logged, no minutes are counted.</source>
        <translation>Los minutos al final del recorrido son las repeticiones anotadas por el tiempo previsto de mantenimiento, en cada lado. Donde no se anotaron repeticiones, no se cuentan minutos.</translation>
    </message>
    <message>
        <source>increase shown on {day}, by now no longer clear</source>
        <translation>aumento mostrado el {day}, que ahora ya no es claro</translation>
    </message>
    <message>
        <source>decrease shown on {day}, by now no longer clear</source>
        <translation>disminución mostrada el {day}, que ahora ya no es clara</translation>
    </message>
    <message>
        <source>{verdict}, counted since {day}</source>
        <translation>{verdict}, contado desde el {day}</translation>
    </message>
    <message>
        <source>{verdict}, counted since {day} ({why})</source>
        <translation>{verdict}, contado desde el {day} ({why})</translation>
    </message>
    <message>
        <source>Lines fitted before and after “{what}” on {day} (days with readings since: {days}): {change} from that day to the latest reading; at once {step}. Change per month before: {before}; after: {after}.</source>
        <translation>Líneas ajustadas antes y después de «{what}», {day} (días con lecturas desde entonces: {days}): {change} desde ese día hasta la última lectura; de inmediato {step}. Cambio al mes antes: {before}; después: {after}.</translation>
    </message>
    <message>
        <source>{words} (too few days: mostly what is usual)</source>
        <translation>{words} (muy pocos días: sobre todo lo habitual)</translation>
    </message>
    <message>
        <source>{day} {month}</source>
        <translation>{day} {month}</translation>
    </message>
    <message>
        <source>The {side} hand is the dominant one. In healthy shoulders, {facts}.</source>
        <translation>El brazo dominante es el {side}. En hombros sanos, {facts}.</translation>
    </message>
    <message>
        <source>the dominant arm turns outwards about {degrees}° further on average</source>
        <translation>el brazo dominante gira hacia fuera unos {degrees}° más en promedio</translation>
    </message>
    <message>
        <source>the dominant hand often reaches a little less far up the back</source>
        <translation>la mano dominante a menudo llega algo menos arriba por la espalda</translation>
    </message>
    <message>
        <source>Before and after an event: two lines and a step, drawn towards a weak assumption (slopes of +2 ± 6° a month, step 0 ± 10°) until there are enough days. The changes at the top compare medians of the last days with those up to the day named there, so the two differ a little.</source>
        <translation>Antes y después de un acontecimiento: dos líneas y un escalón, acercados a una suposición débil (pendientes de +2 ± 6° al mes, escalón de 0 ± 10°) hasta que haya días suficientes. Los cambios de la parte superior comparan medianas de los últimos días con las de los días hasta la fecha indicada allí; por eso difieren un poco.</translation>
    </message>
    <message>
        <source>active {value}°</source>
        <translation>activa {value}°</translation>
    </message>
    <message>
        <source>Too early to say: none of the main movements ({movements}) has been measured on the affected shoulder yet.</source>
        <translation>Es pronto para decir algo: aún no se ha medido ninguno de los movimientos principales ({movements}) del hombro afectado.</translation>
    </message>
    <message>
        <source>Too early to say: none of the main movements ({movements}) has been measured yet, and which shoulder is affected has not been entered.</source>
        <translation>Es pronto para decir algo: aún no se ha medido ninguno de los movimientos principales ({movements}) y no se ha indicado qué hombro está afectado.</translation>
    </message>
    <message>
        <source>Left: {parts}</source>
        <translation>Izquierdo: {parts}</translation>
    </message>
    <message>
        <source>Right: {parts}</source>
        <translation>Derecho: {parts}</translation>
    </message>
    <message>
        <source>Left since {day}: {parts}</source>
        <translation>Izquierdo desde el {day}: {parts}</translation>
    </message>
    <message>
        <source>Right since {day}: {parts}</source>
        <translation>Derecho desde el {day}: {parts}</translation>
    </message>
    <message>
        <source>little or no recent change</source>
        <translation>poco o ningún cambio reciente</translation>
    </message>
    <message>
        <source>more movement earlier, by now no longer clear</source>
        <translation>antes más movimiento, que ahora ya no es claro</translation>
    </message>
    <message>
        <source>less movement earlier, by now no longer clear</source>
        <translation>antes menos movimiento, que ahora ya no es claro</translation>
    </message>
    <message>
        <source>no readings yet</source>
        <translation>aún sin lecturas</translation>
    </message>
    <message>
        <source>more movement earlier in {movements}, by now no longer clear</source>
        <translation>antes más movimiento en {movements}, que ahora ya no es claro</translation>
    </message>
    <message>
        <source>less movement earlier in {movements}, by now no longer clear</source>
        <translation>antes menos movimiento en {movements}, que ahora ya no es claro</translation>
    </message>
    <message>
        <source>no readings yet of {movements}</source>
        <translation>aún sin lecturas de {movements}</translation>
    </message>
    <message>
        <source>So far {days} of the {least_days} sessions and {weeks} of the {least_weeks} weeks it takes.</source>
        <translation>Hay {days} de las {least_days} sesiones y {weeks} de las {least_weeks} semanas necesarias.</translation>
    </message>
    <message>
        <source>The first {count} sessions are for practice and do not count.</source>
        <translation>Las primeras {count} sesiones son de práctica y no cuentan.</translation>
    </message>
    <message>
        <source>counted from {day} on ({why})</source>
        <translation>contado desde el {day} ({why})</translation>
    </message>
    <message>
        <source>marker, to notice when the sessions are lost</source>
        <translation>marca, para notar si se pierden las sesiones</translation>
    </message>
    <message>
        <source>until deleted</source>
        <translation>hasta que se borre</translation>
    </message>
    <message>
        <source>until you delete these people</source>
        <translation>hasta que borre a estas personas</translation>
    </message>
    <message>
        <source>The shoulder is easily irritated today, so two trials of each movement are enough and the reach behind the back is left out. Stop where pain begins.</source>
        <translation>Hoy el hombro se irrita con facilidad: bastan dos intentos de cada movimiento y se omite la mano a la espalda. Pare donde empiece el dolor.</translation>
    </message>
    <message>
        <source>The shoulder is easily irritated today, so two trials are enough. Stop where pain begins.</source>
        <translation>Hoy el hombro se irrita con facilidad: bastan dos intentos. Pare donde empiece el dolor.</translation>
    </message>
    <message>
        <source>The camera {camera} cannot be opened. Close other programs that use it, and allow it in the privacy settings.</source>
        <translation>La cámara {camera} no se puede abrir. Cierre los demás programas que la usen y permita su uso en los ajustes de privacidad.</translation>
    </message>
    <message>
        <source>The camera {camera} is no longer connected. Plug it in again.</source>
        <translation>La cámara {camera} ya no está conectada. Conéctela de nuevo.</translation>
    </message>
    <message>
        <source>You do not have permission to use the camera {camera}. On Linux, your account must belong to the group `video`.</source>
        <translation>No tiene permiso para usar la cámara {camera}. En Linux, su cuenta debe pertenecer al grupo `video`.</translation>
    </message>
    <message>
        <source>The camera {camera} delivers no pictures. Close other programs that use it, open its cover and allow it in the privacy settings.</source>
        <translation>La cámara {camera} no da imágenes. Cierre los demás programas que la usen, abra su tapa y permita su uso en los ajustes de privacidad.</translation>
    </message>
    <message>
        <source>{where}: {clip} is an address. Only files on this computer are read.</source>
        <translation>{where}: {clip} es una dirección. Solo se leen archivos de este ordenador.</translation>
    </message>
    <message>
        <source>{where}: the person must be plain text of at most {most} characters.</source>
        <translation>{where}: la persona debe ser texto sin formato de {most} caracteres como máximo.</translation>
    </message>
    <message>
        <source>{place} contains no clips. Files ending in {endings} are read; name other clips one by one.</source>
        <translation>En {place} no hay grabaciones. Se leen los archivos que terminan en {endings}; las demás grabaciones se nombran una a una.</translation>
    </message>
    <message>
        <source>The clip {clip} caused an error inside Thawline ({kind}: {detail}). Other clips are not affected. Please report the error.</source>
        <translation>La grabación {clip} causó un error interno de Thawline (detalle técnico: {kind}: {detail}). Las demás grabaciones no se ven afectadas. Le rogamos que comunique el error.</translation>
    </message>
    <message>
        <source>An exercise from the list keeps its own name.</source>
        <translation>Un ejercicio de la lista conserva su nombre.</translation>
    </message>
    <message>
        <source>A goal cannot end before the day on which it was added.</source>
        <translation>Una meta no puede terminar antes del día en que se añadió.</translation>
    </message>
    <message>
        <source>A goal is rated from 0 (not possible at all) to 10 (as well as before), not {rating}.</source>
        <translation>Una meta se valora de 0 (imposible) a 10 (tan bien como antes); {rating} no es válido.</translation>
    </message>
    <message>
        <source>An exercise can be planned 1 to 12 times a day.</source>
        <translation>Un ejercicio puede hacerse de 1 a 12 veces al día.</translation>
    </message>
    <message>
        <source>A hold can last 0 to 120 seconds.</source>
        <translation>Una posición se puede mantener de 0 a 120 segundos.</translation>
    </message>
    <message>
        <source>An exercise can have 1 to 50 repetitions.</source>
        <translation>Un ejercicio puede tener de 1 a 50 repeticiones.</translation>
    </message>
    <message>
        <source>Each exercise can be in a programme only once. Change how many times a day instead.</source>
        <translation>Cada ejercicio puede estar una sola vez en un programa. Cambie en su lugar las veces al día.</translation>
    </message>
    <message>
        <source>The review cannot be before the first day of the programme.</source>
        <translation>La revisión no puede ser anterior al primer día del programa.</translation>
    </message>
    <message>
        <source>Choose at most {most} main movements, each only once.</source>
        <translation>Elija {most} movimientos principales como máximo, cada uno una sola vez.</translation>
    </message>
    <message>
        <source>The number of repetitions done must be from 0 to 50.</source>
        <translation>Las repeticiones hechas deben ser de 0 a 50.</translation>
    </message>
    <message>
        <source>The note contains characters that are not text. Type it again.</source>
        <translation>La nota contiene caracteres que no son texto. Escríbala de nuevo.</translation>
    </message>
    <message>
        <source>{text} is not a date like 2026, 2026-03 or 2026-03-14.</source>
        <translation>{text} no es una fecha como 2026, 2026-03 o 2026-03-14.</translation>
    </message>
    <message>
        <source>{what} can contain printable characters only.</source>
        <translation>{what} solo puede contener caracteres imprimibles.</translation>
    </message>
    <message>
        <source>A session can hold only one value of each method for a movement and side.</source>
        <translation>Una sesión solo puede tener un valor de cada método para un movimiento y un lado.</translation>
    </message>
    <message>
        <source>Two saved places are for the same movement, side, camera and picture size.</source>
        <translation>Dos lugares guardados son del mismo movimiento, lado, cámara y tamaño de imagen.</translation>
    </message>
    <message>
        <source>Body lengths or a saved place belong to someone else.</source>
        <translation>Unas longitudes del cuerpo o un lugar guardado pertenecen a otra persona.</translation>
    </message>
    <message>
        <source>Two records of the same kind have the same identifier.</source>
        <translation>Dos registros del mismo tipo tienen el mismo identificador.</translation>
    </message>
    <message>
        <source>The session of the measurement {id} is missing.</source>
        <translation>Falta la sesión de la medición {id}.</translation>
    </message>
    <message>
        <source>The goal of the rating {id} is missing.</source>
        <translation>Falta la meta de la valoración {id}.</translation>
    </message>
    <message>
        <source>The record {id} belongs to someone else.</source>
        <translation>El registro {id} pertenece a otra persona.</translation>
    </message>
    <message>
        <source>Only angles can be entered by hand, not a reach behind the back.</source>
        <translation>A mano solo se pueden introducir ángulos, no la mano a la espalda.</translation>
    </message>
    <message>
        <source>An angle must be between {lowest} and {highest} degrees, not {value}.</source>
        <translation>Un ángulo debe estar entre {lowest} y {highest} grados; {value} no es válido.</translation>
    </message>
    <message>
        <source>It contains {word}, which is not a number in JSON.</source>
        <translation>Contiene {word}, que no es un número en JSON.</translation>
    </message>
    <message>
        <source>It was written by a later version of Thawline (format {version}; this version reads up to {newest}). Update Thawline.</source>
        <translation>Lo escribió una versión posterior de Thawline (formato {version}; esta versión lee hasta el {newest}). Actualice Thawline.</translation>
    </message>
    <message>
        <source>It contains more records than any history can.</source>
        <translation>Contiene más registros de los que puede tener un historial.</translation>
    </message>
    <message>
        <source>It is not JSON, or is incomplete: {detail}.</source>
        <translation>No es JSON o está incompleto (detalle técnico: {detail}).</translation>
    </message>
    <message>
        <source>The field {name} has unexpected contents.</source>
        <translation>El campo {name} no contiene lo esperado.</translation>
    </message>
    <message>
        <source>The clip {clip} could not be read: {fault}. Other clips are not affected. Try again; if it fails again, convert the clip to MP4 (H.264).</source>
        <translation>No se ha podido leer la grabación {clip} (detalle técnico: {fault}). Las demás grabaciones no se ven afectadas. Vuelva a intentarlo; si falla otra vez, conviértala a MP4 (H.264).</translation>
    </message>
    <message>
        <source>The pictures could not be read: {fault}.</source>
        <translation>No se han podido leer las imágenes (detalle técnico: {fault}).</translation>
    </message>
    <message>
        <source>Body tracking could not be started: {fault}.</source>
        <translation>No se ha podido iniciar el seguimiento del cuerpo (detalle técnico: {fault}).</translation>
    </message>
    <message>
        <source>The pose library mediapipe is not installed completely, so the pose model cannot be assembled. Install Thawline&apos;s packages again in a new virtual environment.</source>
        <translation>La biblioteca mediapipe no está instalada por completo, así que no se puede montar el modelo de seguimiento del cuerpo. Instale de nuevo los paquetes de Thawline en un entorno virtual nuevo.</translation>
    </message>
    <message>
        <source>The saved pose model is not the expected one (its SHA-256 differs)</source>
        <translation>El modelo de seguimiento del cuerpo guardado no es el esperado (su SHA-256 es distinto)</translation>
    </message>
    <message>
        <source>The saved pose model is an empty file</source>
        <translation>El modelo de seguimiento del cuerpo guardado es un archivo vacío</translation>
    </message>
    <message>
        <source>The saved pose model is a web page, not a model</source>
        <translation>El modelo de seguimiento del cuerpo guardado es una página web, no un modelo</translation>
    </message>
    <message>
        <source>The saved pose model is incomplete</source>
        <translation>El modelo de seguimiento del cuerpo guardado está incompleto</translation>
    </message>
    <message>
        <source>{damage}: {path}. It is not used. To download it again, run: thawline model</source>
        <translation>{damage}: {path}. No se utiliza. Para descargarlo de nuevo, ejecute: thawline model</translation>
    </message>
    <message>
        <source>The pose model &apos;{quality}&apos; was assembled from the right networks but is not the expected one (SHA-256 {digest}). Thawline was probably not tested with the installed version of mediapipe or flatbuffers: install the versions in constraints.txt.</source>
        <translation>El modelo de seguimiento del cuerpo «{quality}» se montó con las redes correctas, pero no es el esperado (SHA-256 {digest}). Es probable que Thawline no se haya probado con las versiones instaladas de mediapipe o flatbuffers: instale las versiones de constraints.txt.</translation>
    </message>
    <message>
        <source>There is not enough space for the pose model in {folder}: {free} MB free, {needed} MB needed. Free some space, or set THAWLINE_MODELS to a folder on another disk.</source>
        <translation>No hay espacio suficiente para el modelo de seguimiento del cuerpo en {folder}: quedan {free} MB libres y se necesitan {needed} MB. Libere espacio o indique en THAWLINE_MODELS una carpeta de otro disco.</translation>
    </message>
    <message>
        <source>Another Thawline has been downloading the pose model for too long. Close it, then try again.</source>
        <translation>Otro Thawline lleva demasiado tiempo descargando el modelo de seguimiento del cuerpo. Ciérrelo y vuelva a intentarlo.</translation>
    </message>
    <message>
        <source>{client} stopped with code {code}{last}</source>
        <translation>{client} se detuvo con el código {code}{last}</translation>
    </message>
    <message>
        <source>{client} is not installed</source>
        <translation>{client} no está instalado</translation>
    </message>
    <message>
        <source>{client} took longer than {minutes} minutes and was stopped</source>
        <translation>{client} tardó más de {minutes} minutos y se detuvo</translation>
    </message>
    <message>
        <source>{client} reported success but delivered no package</source>
        <translation>{client} terminó sin errores, pero no entregó ningún paquete</translation>
    </message>
    <message>
        <source>{client} found no space left on the disk</source>
        <translation>{client} no encontró espacio libre en el disco</translation>
    </message>
    <message>
        <source>{client} does not trust the certificate of the package registry</source>
        <translation>{client} no confía en el certificado del registro de paquetes</translation>
    </message>
    <message>
        <source>{client} could not reach the package registry; is this computer online?</source>
        <translation>{client} no ha podido conectar con el registro de paquetes; ¿tiene conexión este ordenador?</translation>
    </message>
    <message>
        <source>{client} reports that its registry does not have {package}</source>
        <translation>según {client}, su registro no tiene {package}</translation>
    </message>
    <message>
        <source>{client} delivered a web page instead of a package, perhaps from a proxy or the sign-in page of a public network</source>
        <translation>{client} entregó una página web en lugar de un paquete, quizá de un proxy o de la página de acceso de una red pública</translation>
    </message>
    <message>
        <source>{client} could not be started ({error})</source>
        <translation>no se ha podido iniciar {client} ({error})</translation>
    </message>
    <message>
        <source>{client} delivered a package in which {file} is not the expected one (its SHA-256 differs), so it is not used</source>
        <translation>{client} entregó un paquete en el que {file} no es el esperado (su SHA-256 es distinto), así que no se utiliza</translation>
    </message>
    <message>
        <source>{client} delivered a package without {file}</source>
        <translation>{client} entregó un paquete sin {file}</translation>
    </message>
    <message>
        <source>{client} delivered a package that is incomplete or damaged ({error})</source>
        <translation>{client} entregó un paquete incompleto o dañado (detalle técnico: {error})</translation>
    </message>
    <message>
        <source>There is no folder {folder}. Create it or choose another one.</source>
        <translation>No existe la carpeta {folder}. Créela o elija otra.</translation>
    </message>
    <message>
        <source>This file is the data file itself. Choose a backup instead.</source>
        <translation>Este archivo es el propio archivo de datos. Elija una copia de seguridad.</translation>
    </message>
    <message>
        <source>The backup {path} could not be written ({reason}). Check the free space and permissions of the disk, or choose another place.</source>
        <translation>No se ha podido escribir la copia de seguridad {path} ({reason}). Compruebe el espacio y los permisos del disco, o elija otro lugar.</translation>
    </message>
    <message>
        <source>The backup could not be restored ({reason}). The data file {path} has not changed. Check the free space and permissions of the disk, and that no other program is using the file.</source>
        <translation>No se ha podido restaurar la copia de seguridad ({reason}). El archivo de datos {path} no ha cambiado. Compruebe el espacio y los permisos del disco, y que ningún otro programa esté usando el archivo.</translation>
    </message>
    <message>
        <source>{path} is not a complete backup ({defect}). Nothing was changed. Choose another backup.</source>
        <translation>{path} no es una copia de seguridad completa ({defect}). No se ha cambiado nada. Elija otra copia de seguridad.</translation>
    </message>
    <message>
        <source>Another program has the data file {path} open. Nothing was changed. Close that program and try again.</source>
        <translation>Otro programa tiene abierto el archivo de datos {path}. No se ha cambiado nada. Cierre ese programa y vuelva a intentarlo.</translation>
    </message>
    <message>
        <source>it is not a file of this kind</source>
        <translation>no es un archivo de este tipo</translation>
    </message>
    <message>
        <source>it contains more than {most} entries</source>
        <translation>contiene más de {most} entradas</translation>
    </message>
    <message>
        <source>it is not a file</source>
        <translation>no es un archivo</translation>
    </message>
    <message>
        <source>it is incomplete or damaged</source>
        <translation>está incompleto o dañado</translation>
    </message>
    <message>
        <source>its tables cannot be read</source>
        <translation>sus tablas no se pueden leer</translation>
    </message>
    <message>
        <source>The data file {path} could not be used: {detail}.</source>
        <translation>No se ha podido usar el archivo de datos {path} (detalle técnico: {detail}).</translation>
    </message>
    <message>
        <source>The data file {path} is damaged ({defect}). It was left as it is. Replace it with a backup: thawline restore BACKUP (copies made before updates are in {folder}). The damaged file stays beside it.</source>
        <translation>El archivo de datos {path} está dañado ({defect}). Se ha dejado como estaba. Sustitúyalo por una copia de seguridad: thawline restore BACKUP (las copias hechas antes de las actualizaciones están en {folder}). El archivo dañado se conserva al lado.</translation>
    </message>
    <message>
        <source>There were sessions in {path}, but the file is gone. Put it back where it was, or replace it with a backup: thawline restore BACKUP. Only if you want to start a new history, delete {marker} and try again.</source>
        <translation>Había sesiones en {path}, pero el archivo ya no está. Devuélvalo a su sitio o sustitúyalo por una copia de seguridad: thawline restore BACKUP. Solo si quiere empezar un historial nuevo, borre {marker} y vuelva a intentarlo.</translation>
    </message>
    <message>
        <source>The data file {path} is no longer where it was: it was deleted or moved, or its disk is not connected. This last step may be lost. Put the file or the disk back, or restore a backup with: thawline restore BACKUP. Then open Thawline again.</source>
        <translation>El archivo de datos {path} ya no está donde estaba: se ha borrado o movido, o su disco no está conectado. Puede que este último paso se haya perdido. Devuelva el archivo o el disco a su sitio, o restaure una copia de seguridad con: thawline restore BACKUP. Después, abra Thawline de nuevo.</translation>
    </message>
    <message>
        <source>a text in it cannot be read</source>
        <translation>contiene un texto que no se puede leer</translation>
    </message>
    <message>
        <source>Another program is using the data file {path}. Nothing was changed. Close that program and try again.</source>
        <translation>Otro programa está usando el archivo de datos {path}. No se ha cambiado nada. Cierre ese programa y vuelva a intentarlo.</translation>
    </message>
    <message>
        <source>There is no space left to write to {path}. What was saved before is safe; this last step was not saved. Free some space and save again.</source>
        <translation>No queda espacio para escribir en {path}. Lo guardado antes está a salvo; este último paso no se ha guardado. Libere espacio y guarde de nuevo.</translation>
    </message>
    <message>
        <source>The data file {path} cannot be written to. Nothing was changed. Check who owns the file and its folder, or make the disk writable.</source>
        <translation>No se puede escribir en el archivo de datos {path}. No se ha cambiado nada. Compruebe a quién pertenecen el archivo y su carpeta, o permita la escritura en el disco.</translation>
    </message>
    <message>
        <source>The disk could not read or write {path} ({detail}). What was saved before has not changed. Check that the disk is connected, has free space and can be written to.</source>
        <translation>El disco no ha podido leer o escribir {path} ({detail}). Lo guardado antes no ha cambiado. Compruebe que el disco está conectado, tiene espacio y admite escritura.</translation>
    </message>
    <message>
        <source>The folder {folder} cannot be used ({reason}). Check who owns it and that its disk is connected and has free space, or choose another folder with the environment variable THAWLINE_DATA.</source>
        <translation>No se puede usar la carpeta {folder} ({reason}). Compruebe a quién pertenece y que su disco está conectado y tiene espacio, o elija otra con la variable de entorno THAWLINE_DATA.</translation>
    </message>
    <message>
        <source>{path} is not a data file of Thawline. It was left as it is. Choose a file made with: thawline backup FILE</source>
        <translation>{path} no es un archivo de datos de Thawline. Se ha dejado como estaba. Indique un archivo creado con: thawline backup FILE</translation>
    </message>
    <message>
        <source>{path} was written by a later version of Thawline (its tables have version {version}; this version reads up to {newest}). It was left as it is. Update Thawline and try again.</source>
        <translation>{path} lo escribió una versión posterior de Thawline (sus tablas tienen la versión {version}; esta versión lee hasta la {newest}). Se ha dejado como estaba. Actualice Thawline y vuelva a intentarlo.</translation>
    </message>
    <message>
        <source>A row of the table {table} refers to a row of {other} that no longer exists.</source>
        <translation>Una fila de la tabla {table} remite a una fila de {other} que ya no existe.</translation>
    </message>
    <message>
        <source>Another person is already called {name}. Choose another pseudonym.</source>
        <translation>Otra persona ya se llama {name}. Elija otro seudónimo.</translation>
    </message>
    <message>
        <source>This person is no longer saved here. Choose or add another one.</source>
        <translation>Esta persona ya no está guardada aquí. Elija o añada otra.</translation>
    </message>
    <message>
        <source>This person is no longer saved here. Choose another one.</source>
        <translation>Esta persona ya no está guardada aquí. Elija otra.</translation>
    </message>
    <message>
        <source>This session is no longer saved here. Choose another one.</source>
        <translation>Esta sesión ya no está guardada aquí. Elija otra.</translation>
    </message>
    <message>
        <source>{path} could not be written ({reason}). No partial file was left. Check the name and the free space and permissions of the disk, or choose another place.</source>
        <translation>No se ha podido escribir {path} ({reason}). No ha quedado ningún archivo incompleto. Compruebe el nombre, el espacio y los permisos del disco, o elija otro lugar.</translation>
    </message>
    <message>
        <source>{where}: expected {expected}, not {shown}.</source>
        <translation>{where}: se esperaba {expected}, no {shown}.</translation>
    </message>
    <message>
        <source>{where}: {text} is not a time such as 2026-03-29T01:30:00Z.</source>
        <translation>{where}: {text} no es una hora como 2026-03-29T01:30:00Z.</translation>
    </message>
    <message>
        <source>contains sound only, no pictures</source>
        <translation>solo contiene sonido, sin imágenes</translation>
    </message>
    <message>
        <source>is a compressed archive; extract it and choose the clip inside</source>
        <translation>es un archivo comprimido; descomprímalo y elija la grabación que contiene</translation>
    </message>
    <message>
        <source>is not a video that Thawline recognises</source>
        <translation>no es un vídeo que Thawline reconozca</translation>
    </message>
    <message>
        <source>The clip&apos;s name contains a zero byte. Rename it.</source>
        <translation>El nombre de la grabación contiene un byte nulo. Cámbielo.</translation>
    </message>
    <message>
        <source>{path} is an address, not a file. Nothing is downloaded: save the clip on this computer first.</source>
        <translation>{path} es una dirección, no un archivo. No se descarga nada: guarde antes la grabación en este ordenador.</translation>
    </message>
    <message>
        <source>The clip {clip} is incomplete: its index is missing, as happens when a recording or a copy is interrupted. Record or copy it again.</source>
        <translation>La grabación {clip} está incompleta: le falta el índice, como ocurre cuando se interrumpe la grabación o la copia. Grábela o cópiela de nuevo.</translation>
    </message>
    <message>
        <source>You do not have permission to read the clip {clip}. Ask for it, or copy the clip to a folder of your own.</source>
        <translation>No tiene permiso para leer la grabación {clip}. Solicítelo o cópiela en una carpeta propia.</translation>
    </message>
    <message>
        <source>The clip {clip} was not found in {folder}. Check the name.</source>
        <translation>No se encuentra la grabación {clip} en {folder}. Compruebe el nombre.</translation>
    </message>
    <message>
        <source>The clip {clip} is in a folder that you do not have permission to open. Copy it to one of your own.</source>
        <translation>La grabación {clip} está en una carpeta que usted no tiene permiso para abrir. Cópiela en una carpeta propia.</translation>
    </message>
    <message>
        <source>A saved picture has the shape {shape} and cannot be used.</source>
        <translation>Una imagen guardada tiene las dimensiones {shape} y no se puede usar.</translation>
    </message>
    <message>
        <source>A picture has the shape {shape}, which is neither a colour nor a grey picture.</source>
        <translation>Una imagen tiene las dimensiones {shape}; no es una imagen en color ni en grises.</translation>
    </message>
    <message>
        <source>A picture has pixels of type {kind} and cannot be used.</source>
        <translation>Una imagen tiene píxeles de tipo {kind} y no se puede usar.</translation>
    </message>
    <message>
        <source>The size of the picture is missing or impossible.</source>
        <translation>El tamaño de la imagen no consta o no es posible.</translation>
    </message>
    <message>
        <source>The picture is {width} x {height} pixels, more than Thawline can read. Convert the clip to 1920 x 1080 or smaller.</source>
        <translation>La imagen tiene {width} x {height} píxeles, más de los que Thawline puede leer. Convierta la grabación a 1920 x 1080 o menos.</translation>
    </message>
    <message>
        <source>According to the file, the pixels are {ratio} times as wide as high, which is impossible. Convert the clip to square pixels.</source>
        <translation>Según el archivo, los píxeles de la imagen son {ratio} veces más anchos que altos, lo que no es posible. Convierta la grabación a píxeles cuadrados.</translation>
    </message>
    <message>
        <source>The clip {clip} contains a single picture; a movement needs more.</source>
        <translation>La grabación {clip} contiene una sola imagen; un movimiento necesita más.</translation>
    </message>
    <message>
        <source>Every picture of the clip {clip} is completely black. A dark room would leave some grain: the lens was covered, or the clip&apos;s codec is not decoded correctly here. Convert the video to H.264 without interlacing.</source>
        <translation>Todas las imágenes de la grabación {clip} son completamente negras. Una sala oscura dejaría algo de grano: la lente estaba tapada, o el códec no se descodifica bien aquí. Convierta el vídeo a H.264 sin entrelazado.</translation>
    </message>
    <message>
        <source>The lens is not calibrated; a typical field of view is assumed.</source>
        <translation>La lente no está calibrada; se supone un campo de visión habitual.</translation>
    </message>
    <message>
        <source>Please move or tilt the board: {kept} of {enough} views.</source>
        <translation>Mueva o incline el tablero, por favor: {kept} de {enough} vistas.</translation>
    </message>
    <message>
        <source>This picture is not the same size as the first one; it is left out.</source>
        <translation>Esta imagen no tiene el mismo tamaño que la primera; no se cuenta.</translation>
    </message>
    <message>
        <source>There are enough views. You can still add more.</source>
        <translation>Ya hay vistas suficientes. Aún puede añadir más.</translation>
    </message>
    <message>
        <source>Tilt one side of the board away, by about 30 degrees, and hold it.</source>
        <translation>Incline un lado del tablero hacia atrás, unos 30 grados, y manténgalo.</translation>
    </message>
    <message>
        <source>Move the board to the edge of the picture and hold it.</source>
        <translation>Lleve el tablero al borde de la imagen y manténgalo.</translation>
    </message>
    <message>
        <source>Useful views of the board: {views}. At least {fewest} are needed; 24 are better.</source>
        <translation>Vistas útiles del tablero: {views}. Hacen falta al menos {fewest}; mejor 24.</translation>
    </message>
    <message>
        <source>The board was seen in only {share} % of the picture: show it in the {where} too.</source>
        <translation>El tablero solo se vio en el {share} % de la imagen: muéstrelo también en esta parte: {where}.</translation>
    </message>
    <message>
        <source>No lens fits these views. Check that the board was flat and that only one board was in view.</source>
        <translation>Ninguna lente se ajusta a estas vistas. Compruebe que el tablero estaba plano y que solo se veía uno.</translation>
    </message>
    <message>
        <source>The corners are {error} pixels off the best-fitting lens; at most {most} is accepted. Keep the board flat and hold it still.</source>
        <translation>Las esquinas se apartan {error} píxeles de la lente que mejor se ajusta; se acepta {most} como mucho. Mantenga el tablero plano y quieto.</translation>
    </message>
    <message>
        <source>The board always faced the camera squarely: tilt it to the left, right, up and down, by about 30 degrees, in at least {fewest} views.</source>
        <translation>El tablero estaba siempre de frente: inclínelo a la izquierda, a la derecha, arriba y abajo, unos 30 grados, en al menos {fewest} vistas.</translation>
    </message>
    <message>
        <source>The focal length is still uncertain: tilt the board to each side, and show it nearer and farther away.</source>
        <translation>La distancia focal sigue siendo incierta: incline el tablero a cada lado y muéstrelo más cerca y más lejos.</translation>
    </message>
    <message>
        <source>The calculated lens is not possible at the edge of the picture: show the board nearer to the edge. Fisheye lenses are not supported.</source>
        <translation>La lente calculada no es posible en el borde de la imagen: muestre el tablero más cerca del borde. No sirven las lentes de ojo de pez.</translation>
    </message>
    <message>
        <source>upper left</source>
        <translation>arriba a la izquierda</translation>
    </message>
    <message>
        <source>upper right</source>
        <translation>arriba a la derecha</translation>
    </message>
    <message>
        <source>lower left</source>
        <translation>abajo a la izquierda</translation>
    </message>
    <message>
        <source>lower right</source>
        <translation>abajo a la derecha</translation>
    </message>
    <message>
        <source>Lens calculated from {views} views: {field} degrees wide, error {error} pixels, corners seen in {share} % of the picture.</source>
        <translation>Lente calculada con {views} vistas: {field} grados de ancho, error de {error} píxeles, esquinas vistas en el {share} % de la imagen.</translation>
    </message>
    <message>
        <source>No lens profile was created.</source>
        <translation>No se creó ningún perfil de lente.</translation>
    </message>
    <message>
        <source>The lens was calibrated at {made} pixels, which does not apply at {here}; a typical field of view is assumed. Calibrate the lens at this size too.</source>
        <translation>La lente se calibró a {made} píxeles, lo que no vale a {here}; se supone un campo de visión habitual. Calibre la lente también a este tamaño.</translation>
    </message>
    <message>
        <source>The camera leans about {angle} degrees compared with {day}. Set it level.</source>
        <translation>La cámara está inclinada unos {angle} grados respecto al {day}. Póngala a nivel.</translation>
    </message>
    <message>
        <source>The camera or your body leans about {angle} degrees compared with {day}. Set the camera level and stand upright.</source>
        <translation>La cámara o el cuerpo están inclinados unos {angle} grados respecto al {day}. Ponga la cámara a nivel y enderécese.</translation>
    </message>
    <message>
        <source>You are about {share} % farther away than on {day}. Come a little closer.</source>
        <translation>Está un {share} % más lejos que el {day}. Acérquese un poco.</translation>
    </message>
    <message>
        <source>You are turned about {angle} degrees compared with {day}. Stand as the drawing shows, with your feet on their marks.</source>
        <translation>Su cuerpo está girado unos {angle} grados respecto al {day}. Colóquese como en el dibujo, con los pies en sus marcas.</translation>
    </message>
    <message>
        <source>You are about {share} % nearer than on {day}. Step back a little.</source>
        <translation>Está un {share} % más cerca que el {day}. Retroceda un poco.</translation>
    </message>
    <message>
        <source>The camera or the picture size is not the same as on {day}: the readings start a new series.</source>
        <translation>La cámara o el tamaño de imagen no son los del {day}: las lecturas empiezan una serie nueva.</translation>
    </message>
    <message>
        <source>No one was in view. Stand or sit upright where the camera sees you from head to hips, and come closer if you look small in the picture.</source>
        <translation>No se veía a nadie. Póngase de pie o siéntese erguido donde la cámara le vea de la cabeza a las caderas, y acérquese si sale pequeño en la imagen.</translation>
    </message>
    <message>
        <source>Someone else was followed for part of the time. Ask others to leave the picture.</source>
        <translation>Durante una parte del tiempo se siguió a otra persona. Pida a los demás que salgan de la imagen.</translation>
    </message>
    <message>
        <source>Two people were in view. Ask others to leave the picture.</source>
        <translation>Se veían dos personas. Pida a los demás que salgan de la imagen.</translation>
    </message>
    <message>
        <source>You moved too fast to be followed, or did not stay upright. Move slowly, standing or sitting upright.</source>
        <translation>Se movió demasiado deprisa para poder seguirle, o no estaba erguido. Muévase despacio, de pie o sentado con la espalda recta.</translation>
    </message>
    <message>
        <source>Part of the recording is damaged. Use an undamaged copy, or record the movement again.</source>
        <translation>Una parte de la grabación está dañada. Use una copia sin daños o vuelva a grabar el movimiento.</translation>
    </message>
    <message>
        <source>Your head was not above your hips: the picture is on its side, or you were lying or bending. Set the camera upright, and stand or sit upright.</source>
        <translation>La cabeza no estaba por encima de las caderas: la imagen está girada, o usted estaba tumbado o inclinado. Ponga la cámara derecha, y colóquese de pie o sentado con la espalda recta.</translation>
    </message>
    <message>
        <source>The camera saw you from the wrong direction for this movement. Stand as the drawing shows.</source>
        <translation>La cámara le veía desde una dirección que no sirve para este movimiento. Colóquese como en el dibujo.</translation>
    </message>
    <message>
        <source>The camera saw you from the front. Turn your back to the camera.</source>
        <translation>La cámara le veía de frente. Dé la espalda a la cámara.</translation>
    </message>
    <message>
        <source>Your body was turned to one side. Turn your chest, or your back, squarely to the camera.</source>
        <translation>Tenía el cuerpo girado hacia un lado. Ponga el pecho, o la espalda, de lleno hacia la cámara.</translation>
    </message>
    <message>
        <source>Your body was not turned by about 45 degrees. Face the camera first, then turn halfway to the side, with the measured arm nearer to the camera.</source>
        <translation>El cuerpo no estaba girado unos 45 grados. Mire primero a la cámara y luego gire hasta quedar medio de lado, con el brazo que se mide más cerca de la cámara.</translation>
    </message>
    <message>
        <source>The arm was on the far side of your body. Turn your other side to the camera.</source>
        <translation>El brazo estaba en el lado más alejado del cuerpo. Ponga el otro costado hacia la cámara.</translation>
    </message>
    <message>
        <source>Your shoulder, hand or hips were outside the picture. Step back or move the camera.</source>
        <translation>El hombro, la mano o las caderas quedaban fuera de la imagen. Aléjese un poco o mueva la cámara.</translation>
    </message>
    <message>
        <source>The hand was not seen behind your back. Put the back of the hand against your back, with the thumb pointing up.</source>
        <translation>No se veía la mano detrás de la espalda. Apoye el dorso de la mano en la espalda, con el pulgar hacia arriba.</translation>
    </message>
    <message>
        <source>The arm seemed to change its length, so it was not seen reliably. Wear close-fitting clothes and add light.</source>
        <translation>El brazo parecía cambiar de longitud, así que no se veía con seguridad. Use ropa ajustada y añada luz.</translation>
    </message>
    <message>
        <source>The left and right sides were mixed up. Face the same way throughout, in front of a plain background.</source>
        <translation>Se confundieron el lado izquierdo y el derecho. Mire todo el tiempo en la misma dirección, delante de un fondo liso.</translation>
    </message>
    <message>
        <source>The elbow was bent. Keep it as straight as is comfortable.</source>
        <translation>El codo estaba doblado. Manténgalo tan recto como le resulte cómodo.</translation>
    </message>
    <message>
        <source>The elbow was not at a right angle. Bend it to about 90 degrees and keep the forearm level.</source>
        <translation>El codo no estaba en ángulo recto. Dóblelo unos 90 grados y mantenga el antebrazo horizontal.</translation>
    </message>
    <message>
        <source>The elbow moved away from your side. Keep it on the rolled towel.</source>
        <translation>El codo se separó del costado. Manténgalo sobre la toalla enrollada.</translation>
    </message>
    <message>
        <source>Your body leaned. Stay upright and let only the arm move.</source>
        <translation>El cuerpo se inclinó. Manténgase erguido y mueva solo el brazo.</translation>
    </message>
    <message>
        <source>Your body turned during the movement. Keep your chest still.</source>
        <translation>El cuerpo giró durante el movimiento. Mantenga el pecho quieto.</translation>
    </message>
    <message>
        <source>The arm moved towards or away from the camera. Move it as the drawing shows.</source>
        <translation>El brazo se movió hacia la cámara o alejándose de ella. Muévalo como en el dibujo.</translation>
    </message>
    <message>
        <source>The shoulder rose more than usual with the arm. This is common with a stiff shoulder; it is only noted.</source>
        <translation>El hombro subió con el brazo más de lo habitual. Es frecuente en un hombro rígido; solo se anota.</translation>
    </message>
    <message>
        <source>The other arm was raised too. Compare this reading only with others that were taken in the same way.</source>
        <translation>El otro brazo también estaba levantado. Compare esta lectura solo con otras tomadas de la misma manera.</translation>
    </message>
    <message>
        <source>You were not seen facing the camera first. Face the camera for a second with your arms hanging, then turn.</source>
        <translation>No se le vio primero de frente a la cámara. Mire a la cámara un segundo con los brazos colgando y luego gire.</translation>
    </message>
    <message>
        <source>The forearm did not start straight ahead of your chest. Begin with the elbow at your side and the forearm as straight ahead as is comfortable.</source>
        <translation>El antebrazo no empezó apuntando hacia delante. Empiece con el codo pegado al costado y el antebrazo hacia delante, tanto como le resulte cómodo.</translation>
    </message>
    <message>
        <source>The movement did not begin from rest. Rest for a second in the starting position first.</source>
        <translation>El movimiento no empezó desde el reposo. Descanse antes un segundo en la posición inicial.</translation>
    </message>
    <message>
        <source>No movement of this kind was seen. If little movement is possible, go as far as is comfortable and pause there for two seconds.</source>
        <translation>No se vio ningún movimiento de este tipo. Si puede moverse poco, llegue hasta donde le resulte cómodo y quédese ahí dos segundos.</translation>
    </message>
    <message>
        <source>Hardly any movement was seen. The reading is of the position that was held.</source>
        <translation>Apenas se vio movimiento. La lectura es de la posición que se mantuvo.</translation>
    </message>
    <message>
        <source>The arm was not still for one second. Next time, pause for a second wherever it is comfortable.</source>
        <translation>El brazo no estuvo quieto un segundo. La próxima vez, pare un segundo donde le resulte cómodo.</translation>
    </message>
    <message>
        <source>The arm was not quite still while it was held. Next time, pause for a second wherever it is comfortable.</source>
        <translation>El brazo no estuvo del todo quieto al mantener la posición. La próxima vez, pare un segundo donde le resulte cómodo.</translation>
    </message>
    <message>
        <source>Repeated analyses of the same pictures disagreed. Try closer-fitting clothes, more light or a plainer background.</source>
        <translation>Varios análisis de las mismas imágenes no coincidieron. Pruebe con ropa más ajustada, más luz o un fondo más liso.</translation>
    </message>
    <message>
        <source>Fewer than three trials were counted.</source>
        <translation>Se contaron menos de tres intentos.</translation>
    </message>
    <message>
        <source>The trials differed from each other more than usual.</source>
        <translation>Los intentos difirieron entre sí más de lo habitual.</translation>
    </message>
    <message>
        <source>Sit at a table, hand on a cloth, and let it slide away from you as you lean forwards.</source>
        <translation>Siéntese a una mesa con la mano sobre un paño y deje que se deslice hacia delante mientras se inclina.</translation>
    </message>
    <message>
        <source>Face a wall and walk your fingers up it, with your arm resting against the wall.</source>
        <translation>Frente a una pared, suba los dedos por ella paso a paso, con el brazo apoyado en la pared.</translation>
    </message>
    <message>
        <source>With your other hand, hold the elbow and draw the arm across your chest.</source>
        <translation>Con la otra mano, sujete el codo y lleve el brazo por delante del pecho.</translation>
    </message>
    <message>
        <source>Hang a towel over the other shoulder and hold it behind your back with both hands. Draw it gently upwards.</source>
        <translation>Póngase una toalla sobre el otro hombro y sujétela detrás de la espalda con las dos manos. Tire de ella suavemente hacia arriba.</translation>
    </message>
    <message>
        <source>probably increasing</source>
        <translation>probablemente en aumento</translation>
    </message>
    <message>
        <source>increasing</source>
        <translation>en aumento</translation>
    </message>
    <message>
        <source>probably decreasing</source>
        <translation>probablemente en descenso</translation>
    </message>
    <message>
        <source>decreasing</source>
        <translation>en descenso</translation>
    </message>
    <message>
        <source>levelled off</source>
        <translation>estabilizado por debajo del otro lado</translation>
    </message>
    <message>
        <source>{movement}, {side} side: the last {sessions} sessions were far below the weeks before, by {value} on average.</source>
        <translation>{movement}, lado {side}: las últimas {sessions} sesiones quedaron muy por debajo de las semanas anteriores, {value} de media.</translation>
    </message>
    <message>
        <source>{movement}, {side} side: the latest session was far below the weeks before, by {value}.</source>
        <translation>{movement}, lado {side}: la última sesión quedó muy por debajo de las semanas anteriores, {value}.</translation>
    </message>
    <message>
        <source>{movement}, {side} side: readings on the latest day range from {lowest} to {highest}, more than their 95 % intervals allow.</source>
        <translation>{movement}, lado {side}: las lecturas del último día van de {lowest} a {highest}, más de lo que permiten sus intervalos del 95 %.</translation>
    </message>
    <message>
        <source>{movement}, {side} side: little or no change over the last {weeks} weeks (a gain of {least} a month is unlikely; at most {most}, 95 %), and about {short} less than the other side.</source>
        <translation>{movement}, lado {side}: poco o ningún cambio en las últimas {weeks} semanas (una mejora de {least} al mes es improbable; como mucho {most}, 95 %), y unos {short} menos que el otro lado.</translation>
    </message>
    <message>
        <source>{movement}, {side} side: no clear gain over three months.</source>
        <translation>{movement}, lado {side}: ninguna mejora clara en tres meses.</translation>
    </message>
    <message>
        <source>Pain at rest or at night over the last two weeks: {rating} of 10 (median of {sessions} sessions).</source>
        <translation>Dolor en reposo o por la noche en las dos últimas semanas: {rating} de 10 (mediana de {sessions} sesiones).</translation>
    </message>
    <message>
        <source>Worst pain in 24 hours: about {rating} of 10 over the last two weeks, about {before} in the weeks before.</source>
        <translation>Peor dolor en 24 horas: unos {rating} de 10 en las dos últimas semanas, unos {before} en las semanas anteriores.</translation>
    </message>
    <message>
        <source>Please show this to your clinician.</source>
        <translation>Muestre esto a su profesional sanitario.</translation>
    </message>
    <message>
        <source>increased</source>
        <translation>aumentó</translation>
    </message>
    <message>
        <source>decreased</source>
        <translation>disminuyó</translation>
    </message>
    <message>
        <source>no reading since {last}, so nothing can be said about today; the verdict on {day} was: {verdict}</source>
        <translation>sin lecturas desde el {last}, por lo que no se puede decir nada de hoy; el resultado del {day} era: {verdict}</translation>
    </message>
    <message>
        <source>no reading since {last}, so nothing can be said about today</source>
        <translation>sin lecturas desde el {last}, por lo que no se puede decir nada de hoy</translation>
    </message>
    <message>
        <source>too early to say; it takes four weeks and eight sessions, counted again from {day} ({why})</source>
        <translation>todavía es pronto para saberlo; hacen falta cuatro semanas y ocho sesiones, contadas de nuevo desde el {day} ({why})</translation>
    </message>
    <message>
        <source>{verdict} (secondary)</source>
        <translation>{verdict} (movimiento secundario)</translation>
    </message>
    <message>
        <source>Secondary: not one of the main movements, so a verdict on it needs more evidence.</source>
        <translation>Movimiento secundario: no es uno de los principales, así que un resultado exige más pruebas.</translation>
    </message>
    <message>
        <source>{change} a month, probably no more: in the first weeks of a verdict a change tends to look too large</source>
        <translation>{change} al mes, probablemente no más: en las primeras semanas de un resultado, el cambio suele parecer mayor de lo que es</translation>
    </message>
    <message>
        <source>{change} compared with the first weeks</source>
        <translation>{change} respecto a las primeras semanas</translation>
    </message>
    <message>
        <source>{words} (not yet proven)</source>
        <translation>{words} (aún sin demostrar)</translation>
    </message>
    <message>
        <source>Whatever else happened at the same time cannot be separated from the effect of an event, and neither can chance.</source>
        <translation>Lo que ocurrió además al mismo tiempo no puede separarse del efecto de un acontecimiento, y el azar tampoco.</translation>
    </message>
    <message>
        <source>With about one session every {weeks} weeks, {sentence}</source>
        <translation>Con más o menos una sesión cada {weeks} semanas, {sentence}</translation>
    </message>
    <message>
        <source>With about one session a week, {sentence}</source>
        <translation>Con más o menos una sesión por semana, {sentence}</translation>
    </message>
    <message>
        <source>With about {rhythm} sessions a week, {sentence}</source>
        <translation>Con unas {rhythm} sesiones por semana, {sentence}</translation>
    </message>
    <message>
        <source>a steady gain would become clear, with a chance of 80 %: {gains}.</source>
        <translation>una mejora constante quedaría clara, con una probabilidad del 80 %: {gains}.</translation>
    </message>
    <message>
        <source>With {rhythm} a week, {gain} a month would become clear in about {weeks} weeks.</source>
        <translation>Con {rhythm} por semana, {gain} al mes quedarían claros en unas {weeks} semanas.</translation>
    </message>
    <message>
        <source>This is not advice to measure more often: what you agreed with your clinician comes first.</source>
        <translation>Esto no es un consejo para medir más a menudo: lo acordado con su profesional sanitario es lo primero.</translation>
    </message>
    <message>
        <source>{levels} levels, {value} ({low} to {high}) cm</source>
        <translation>{levels} niveles, {value} ({low} a {high}) cm</translation>
    </message>
    <message>
        <source>level {level}</source>
        <translation>nivel {level}</translation>
    </message>
    <message>
        <source>active</source>
        <translation>activo</translation>
    </message>
    <message>
        <source>helped by someone</source>
        <translation>con ayuda de otra persona</translation>
    </message>
    <message>
        <source>An estimate made with a camera, not a diagnosis and not a medical device.</source>
        <translation>Estimación hecha con una cámara; no es un diagnóstico ni procede de un producto sanitario.</translation>
    </message>
    <message>
        <source>DEMO DATA: this person and all these readings are made up.</source>
        <translation>DATOS DE DEMOSTRACIÓN: esta persona y todas estas lecturas son inventadas.</translation>
    </message>
    <message>
        <source>Behind the back, levels of the spine are shown. Changes are given in levels and centimetres, both approximate: they assume a back of usual length.</source>
        <translation>En la espalda se muestran niveles de la columna. Los cambios se dan en niveles y centímetros, ambos aproximados: suponen una espalda de longitud habitual.</translation>
    </message>
    <message>
        <source>began gradually</source>
        <translation>empezó poco a poco</translation>
    </message>
    <message>
        <source>began with an injury</source>
        <translation>empezó con una lesión</translation>
    </message>
    <message>
        <source>began with an operation</source>
        <translation>empezó con una operación</translation>
    </message>
    <message>
        <source>began while the arm was kept still</source>
        <translation>empezó con el brazo inmovilizado</translation>
    </message>
    <message>
        <source>against the trunk&apos;s axis</source>
        <translation>respecto al eje del tronco</translation>
    </message>
    <message>
        <source>against the vertical</source>
        <translation>respecto a la vertical</translation>
    </message>
    <message>
        <source>left side affected</source>
        <translation>lado izquierdo afectado</translation>
    </message>
    <message>
        <source>right side affected</source>
        <translation>lado derecho afectado</translation>
    </message>
    <message>
        <source>both shoulders affected</source>
        <translation>ambos hombros afectados</translation>
    </message>
    <message>
        <source>left-handed</source>
        <translation>mano dominante izquierda</translation>
    </message>
    <message>
        <source>right-handed</source>
        <translation>mano dominante derecha</translation>
    </message>
    <message>
        <source>diabetes</source>
        <translation>diabetes</translation>
    </message>
    <message>
        <source>no diabetes</source>
        <translation>sin diabetes</translation>
    </message>
    <message>
        <source>thyroid disease</source>
        <translation>enfermedad tiroidea</translation>
    </message>
    <message>
        <source>no thyroid disease</source>
        <translation>sin enfermedad tiroidea</translation>
    </message>
    <message>
        <source>aged under 40</source>
        <translation>menos de 40 años</translation>
    </message>
    <message>
        <source>aged 40 to 49</source>
        <translation>de 40 a 49 años</translation>
    </message>
    <message>
        <source>aged 50 to 59</source>
        <translation>de 50 a 59 años</translation>
    </message>
    <message>
        <source>aged 60 to 69</source>
        <translation>de 60 a 69 años</translation>
    </message>
    <message>
        <source>aged 70 or over</source>
        <translation>70 años o más</translation>
    </message>
    <message>
        <source>{movement} seen from the front</source>
        <translation>{movement} vista de frente</translation>
    </message>
    <message>
        <source>{movement} seen from the back</source>
        <translation>{movement} vista desde atrás</translation>
    </message>
    <message>
        <source>{movement} seen from the side</source>
        <translation>{movement} vista de lado</translation>
    </message>
    <message>
        <source>Before “{why}”, {side} side, {first} to {last}: {trends}.</source>
        <translation>Antes de «{why}», lado {side}, del {first} al {last}: {trends}.</translation>
    </message>
    <message>
        <source>passive {value}°</source>
        <translation>pasiva {value}°</translation>
    </message>
    <message>
        <source>{movement}, {side}: decreasing</source>
        <translation>{movement}, {side}: en descenso</translation>
    </message>
    <message>
        <source>{movement}, {side}: fell suddenly</source>
        <translation>{movement}, {side}: bajó de repente</translation>
    </message>
    <message>
        <source>{movement}, {side}: readings on one day disagree, measure again</source>
        <translation>{movement}, {side}: las lecturas de un mismo día no coinciden, repita la medición</translation>
    </message>
    <message>
        <source>{movement}, {side}: levelled off</source>
        <translation>{movement}, {side}: estabilizado</translation>
    </message>
    <message>
        <source>{movement}, {side}: no clear gain in three months</source>
        <translation>{movement}, {side}: sin mejoría clara en tres meses</translation>
    </message>
    <message>
        <source>more pain than before</source>
        <translation>más dolor que antes</translation>
    </message>
    <message>
        <source>Left since {day} ({why}): {parts}</source>
        <translation>Izquierdo desde el {day} ({why}): {parts}</translation>
    </message>
    <message>
        <source>Right since {day} ({why}): {parts}</source>
        <translation>Derecho desde el {day} ({why}): {parts}</translation>
    </message>
    <message>
        <source>Both shoulders: {parts}</source>
        <translation>Ambos hombros: {parts}</translation>
    </message>
    <message>
        <source>less movement than before</source>
        <translation>menos movimiento que antes</translation>
    </message>
    <message>
        <source>probably less movement than before</source>
        <translation>probablemente menos movimiento que antes</translation>
    </message>
    <message>
        <source>more movement than before</source>
        <translation>más movimiento que antes</translation>
    </message>
    <message>
        <source>probably more movement than before</source>
        <translation>probablemente más movimiento que antes</translation>
    </message>
    <message>
        <source>steady</source>
        <translation>estable</translation>
    </message>
    <message>
        <source>less movement in {movements}</source>
        <translation>menos movimiento en {movements}</translation>
    </message>
    <message>
        <source>probably less movement in {movements}</source>
        <translation>probablemente menos movimiento en {movements}</translation>
    </message>
    <message>
        <source>more movement in {movements}</source>
        <translation>más movimiento en {movements}</translation>
    </message>
    <message>
        <source>probably more movement in {movements}</source>
        <translation>probablemente más movimiento en {movements}</translation>
    </message>
    <message>
        <source>a gain of {gain} a month would show in about {weeks} weeks</source>
        <translation>una mejora de {gain} al mes se vería en unas {weeks} semanas</translation>
    </message>
    <message>
        <source>a gain of {gain} a month would show in about a week</source>
        <translation>una mejora de {gain} al mes se vería en una semana aproximadamente</translation>
    </message>
    <message>
        <source>how far away and how turned people stood</source>
        <translation>a qué distancia y con qué giro estaban las personas</translation>
    </message>
    <message>
        <source>shows that a window is open</source>
        <translation>indica que hay una ventana abierta</translation>
    </message>
    <message>
        <source>body tracking models, nothing about people</source>
        <translation>modelos de seguimiento del cuerpo, nada sobre personas</translation>
    </message>
    <message>
        <source>while Thawline is open</source>
        <translation>mientras Thawline esté abierto</translation>
    </message>
    <message>
        <source>until it is imported</source>
        <translation>hasta que se importe</translation>
    </message>
    <message>
        <source>the latest 2 MB</source>
        <translation>los últimos 2 MB</translation>
    </message>
    <message>
        <source>There are two cameras called {camera}. Plug it in, or choose one on the set-up page.</source>
        <translation>Hay dos cámaras con el nombre {camera}. Conéctela o elija una en la página de preparación.</translation>
    </message>
    <message>
        <source>There is no camera called {camera}. Plug it in, or choose one on the set-up page.</source>
        <translation>No hay ninguna cámara con el nombre {camera}. Conéctela o elija una en la página de preparación.</translation>
    </message>
    <message>
        <source>No camera is connected. Plug one in and try again.</source>
        <translation>No hay ninguna cámara conectada. Conecte una y vuelva a intentarlo.</translation>
    </message>
    <message>
        <source>The cameras could not be listed within {seconds} s. Unplug cameras that are not needed and try again.</source>
        <translation>No se pudo obtener la lista de cámaras en {seconds} s. Desconecte las que no necesite y vuelva a intentarlo.</translation>
    </message>
    <message>
        <source>The cameras could not be listed. Run `thawline check`: it names what is missing.</source>
        <translation>No se pudo obtener la lista de cámaras. Ejecute `thawline check`: indica qué falta.</translation>
    </message>
    <message>
        <source>{path} names no clips. Add one line for each clip.</source>
        <translation>{path} no nombra ninguna grabación. Añada una línea por grabación.</translation>
    </message>
    <message>
        <source>{path} is a folder. Give a CSV file.</source>
        <translation>{path} es una carpeta. Indique un archivo CSV.</translation>
    </message>
    <message>
        <source>There is no file {path}. Check the name.</source>
        <translation>No existe el archivo {path}. Compruebe el nombre.</translation>
    </message>
    <message>
        <source>{path} is not a file. Give a CSV file.</source>
        <translation>{path} no es un archivo. Indique un archivo CSV.</translation>
    </message>
    <message>
        <source>{path} is not a text file. Save it as CSV in UTF-8.</source>
        <translation>{path} no es un archivo de texto. Guárdelo como CSV en UTF-8.</translation>
    </message>
    <message>
        <source>{where}: no clip is named.</source>
        <translation>{where}: no se nombra ninguna grabación.</translation>
    </message>
    <message>
        <source>{where}: {movement} is not a movement. Use one of {choices}.</source>
        <translation>{where}: {movement} no es un movimiento. Use uno de estos: {choices}.</translation>
    </message>
    <message>
        <source>{where}: {side} is not a side. Use left or right.</source>
        <translation>{where}: {side} no es un lado. Escriba left (izquierdo) o right (derecho).</translation>
    </message>
    <message>
        <source>{where}: {view} is not a view. Use one of {choices}.</source>
        <translation>{where}: {view} no es una vista. Use una de estas: {choices}.</translation>
    </message>
    <message>
        <source>{where}: the reference {text} is not a number. Write it with a decimal point.</source>
        <translation>{where}: la referencia {text} no es un número. Escríbalo con punto decimal.</translation>
    </message>
    <message>
        <source>{path}, line {line}: {detail}.</source>
        <translation>{path}, línea {line}: no se puede leer como CSV (detalle técnico: {detail}).</translation>
    </message>
    <message>
        <source>{path}, line {line}</source>
        <translation>{path}, línea {line}</translation>
    </message>
    <message>
        <source>{path} is larger than {megabytes} MB. Split it into several.</source>
        <translation>{path} ocupa más de {megabytes} MB. Divídalo en varios.</translation>
    </message>
    <message>
        <source>{path} cannot be read: {reason}.</source>
        <translation>No se puede leer {path}: {reason}.</translation>
    </message>
    <message>
        <source>{path} is not UTF-8 text. Save it as CSV in UTF-8.</source>
        <translation>{path} no es texto en UTF-8. Guárdelo como CSV en UTF-8.</translation>
    </message>
    <message>
        <source>{place} cannot be opened: {reason}.</source>
        <translation>No se puede abrir {place}: {reason}.</translation>
    </message>
    <message>
        <source>The name of an exercise</source>
        <translation>El nombre de un ejercicio</translation>
    </message>
    <message>
        <source>A goal</source>
        <translation>Una meta</translation>
    </message>
    <message>
        <source>A pseudonym</source>
        <translation>Un seudónimo</translation>
    </message>
    <message>
        <source>A note can have {most} characters; this has {count}.</source>
        <translation>Una nota puede tener {most} caracteres; esta tiene {count}.</translation>
    </message>
    <message>
        <source>{what} needs at least one character.</source>
        <translation>{what} necesita al menos un carácter.</translation>
    </message>
    <message>
        <source>{what} can have {most} characters; this has {count}.</source>
        <translation>{what} puede tener {most} caracteres; aquí hay {count}.</translation>
    </message>
    <message>
        <source>Pain is rated from 0 (none) to 10 (worst imaginable), not {rating}.</source>
        <translation>El dolor se puntúa de 0 (ninguno) a 10 (el peor imaginable); {rating} no es válido.</translation>
    </message>
    <message>
        <source>There is no such date as {text}.</source>
        <translation>La fecha {text} no existe.</translation>
    </message>
    <message>
        <source>It is larger than any history can be ({megabytes} MB).</source>
        <translation>Es más grande de lo que puede ser un historial ({megabytes} MB).</translation>
    </message>
    <message>
        <source>It is JSON, but not a history. Name a file made with: thawline export PERSON --format json</source>
        <translation>Es JSON, pero no es un historial de los que crea `thawline export PERSON --format json`.</translation>
    </message>
    <message>
        <source>It does not say which version of the format it has.</source>
        <translation>No indica qué versión del formato tiene.</translation>
    </message>
    <message>
        <source>There is no file {path}.</source>
        <translation>No existe el archivo {path}.</translation>
    </message>
    <message>
        <source>It is not UTF-8 text.</source>
        <translation>No es texto en UTF-8.</translation>
    </message>
    <message>
        <source>It is nested too deeply for a history.</source>
        <translation>Tiene demasiados niveles anidados para ser un historial.</translation>
    </message>
    <message>
        <source>The field {name} is missing.</source>
        <translation>Falta el campo {name}.</translation>
    </message>
    <message>
        <source>{path} cannot be imported. {error} Nothing was changed. Choose a file that `thawline export --format json` wrote.</source>
        <translation>No se puede importar {path}. {error} No se ha cambiado nada. Elija un archivo creado con `thawline export --format json`.</translation>
    </message>
    <message>
        <source>Permission denied</source>
        <translation>permiso denegado</translation>
    </message>
    <message>
        <source>Operation not permitted</source>
        <translation>operación no permitida</translation>
    </message>
    <message>
        <source>No space left on device</source>
        <translation>no queda espacio en el disco</translation>
    </message>
    <message>
        <source>Disk quota exceeded</source>
        <translation>se ha superado la cuota de disco</translation>
    </message>
    <message>
        <source>Read-only file system</source>
        <translation>el disco es de solo lectura</translation>
    </message>
    <message>
        <source>Input/output error</source>
        <translation>error de lectura o escritura</translation>
    </message>
    <message>
        <source>No such file or directory</source>
        <translation>el archivo o la carpeta no existe</translation>
    </message>
    <message>
        <source>Not a directory</source>
        <translation>no es una carpeta</translation>
    </message>
    <message>
        <source>Is a directory</source>
        <translation>es una carpeta</translation>
    </message>
    <message>
        <source>File exists</source>
        <translation>el archivo ya existe</translation>
    </message>
    <message>
        <source>File name too long</source>
        <translation>el nombre es demasiado largo</translation>
    </message>
    <message>
        <source>Device or resource busy</source>
        <translation>el disco o el archivo está ocupado</translation>
    </message>
    <message>
        <source>Too many open files</source>
        <translation>hay demasiados archivos abiertos</translation>
    </message>
    <message>
        <source>Too many levels of symbolic links</source>
        <translation>hay demasiados enlaces simbólicos encadenados</translation>
    </message>
    <message>
        <source>File too large</source>
        <translation>el archivo es demasiado grande</translation>
    </message>
    <message>
        <source>Stale file handle</source>
        <translation>el archivo ya no está donde estaba</translation>
    </message>
    <message>
        <source>Invalid argument</source>
        <translation>el sistema no admite esta operación</translation>
    </message>
    <message>
        <source>The pose model &apos;{quality}&apos; is not on this computer yet. Run: thawline model</source>
        <translation>El modelo de seguimiento del cuerpo «{quality}» todavía no está en este ordenador. Ejecute: thawline model</translation>
    </message>
    <message>
        <source>The pose model {path} cannot be read ({reason}). Check the permissions of the file, or delete it and run: thawline model</source>
        <translation>No se puede leer el modelo de seguimiento del cuerpo {path} ({reason}). Compruebe los permisos del archivo, o bórrelo y ejecute: thawline model</translation>
    </message>
    <message>
        <source>The pose model cannot be saved in {folder} ({reason}). Make the folder writable, or set THAWLINE_MODELS to another folder.</source>
        <translation>No se puede guardar el modelo de seguimiento del cuerpo en {folder} ({reason}). Dé permiso de escritura a la carpeta o indique otra en THAWLINE_MODELS.</translation>
    </message>
    <message>
        <source>{path} exists already and was left as it is. Choose another name.</source>
        <translation>{path} ya existe y se ha dejado como estaba. Elija otro nombre.</translation>
    </message>
    <message>
        <source>{path} cannot be used: {reason}. It was left as it is. Rename or delete it, then calibrate again.</source>
        <translation>No se puede usar {path}: {reason}. Se ha dejado como estaba. Cámbiele el nombre o bórrelo y calibre de nuevo.</translation>
    </message>
    <message>
        <source>it is far too large</source>
        <translation>es demasiado grande</translation>
    </message>
    <message>
        <source>{path} was written by a newer Thawline. Update this one to use it.</source>
        <translation>{path} lo escribió una versión más reciente de Thawline. Actualice esta para usarlo.</translation>
    </message>
    <message>
        <source>{path} cannot be read ({reason}). Check that you may open it.</source>
        <translation>No se puede leer {path} ({reason}). Compruebe que tiene permiso para abrirlo.</translation>
    </message>
    <message>
        <source>it has {size} of {whole} bytes</source>
        <translation>tiene {size} de {whole} bytes</translation>
    </message>
    <message>
        <source>file is not a database</source>
        <translation>el archivo no es una base de datos</translation>
    </message>
    <message>
        <source>database disk image is malformed</source>
        <translation>la base de datos está dañada</translation>
    </message>
    <message>
        <source>disk I/O error</source>
        <translation>error de lectura o escritura del disco</translation>
    </message>
    <message>
        <source>unable to open database file</source>
        <translation>no se puede abrir el archivo de la base de datos</translation>
    </message>
    <message>
        <source>it has only {size} bytes</source>
        <translation>solo tiene {size} bytes</translation>
    </message>
    <message>
        <source>The record {id} belongs to another person here. Nothing was imported. Check where this file comes from.</source>
        <translation>El registro {id} pertenece aquí a otra persona. No se ha importado nada. Compruebe de dónde procede este archivo.</translation>
    </message>
    <message>
        <source>The folder {folder} cannot be opened ({reason}). Check who owns it.</source>
        <translation>No se puede abrir la carpeta {folder} ({reason}). Compruebe a quién pertenece.</translation>
    </message>
    <message>
        <source>{path} exists already and was left as it is. Choose another name, such as: {unused}</source>
        <translation>{path} ya existe y se ha dejado como estaba. Elija otro nombre, por ejemplo: {unused}</translation>
    </message>
    <message>
        <source>{path} cannot be written: {reason}. Choose a folder that exists and that you may write to.</source>
        <translation>No se puede escribir {path}: {reason}. Elija una carpeta que exista y en la que tenga permiso de escritura.</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nada</translation>
    </message>
    <message>
        <source>a list of {count}</source>
        <translation>una lista de {count} elementos</translation>
    </message>
    <message>
        <source>an object</source>
        <translation>un objeto</translation>
    </message>
    <message>
        <source>a number</source>
        <translation>un número</translation>
    </message>
    <message>
        <source>a finite number</source>
        <translation>un número finito</translation>
    </message>
    <message>
        <source>a whole number</source>
        <translation>un número entero</translation>
    </message>
    <message>
        <source>text</source>
        <translation>un texto</translation>
    </message>
    <message>
        <source>{where}: half a character; the file is damaged.</source>
        <translation>{where}: un carácter incompleto; el archivo está dañado.</translation>
    </message>
    <message>
        <source>true or false</source>
        <translation>verdadero o falso (true o false)</translation>
    </message>
    <message>
        <source>a list</source>
        <translation>una lista</translation>
    </message>
    <message>
        <source>{where}: unknown field {name}; a later version may have written it.</source>
        <translation>{where}: campo desconocido {name}; puede que lo haya escrito una versión posterior.</translation>
    </message>
    <message>
        <source>{where}: the field {name} is missing.</source>
        <translation>{where}: falta el campo {name}.</translation>
    </message>
    <message>
        <source>one of {choices}</source>
        <translation>uno de estos valores: {choices}</translation>
    </message>
    <message>
        <source>a day such as 2026-03-29</source>
        <translation>un día como 2026-03-29</translation>
    </message>
    <message>
        <source>A column that holds JSON is damaged: {detail}.</source>
        <translation>Una columna que contiene JSON está dañada (detalle técnico: {detail}).</translation>
    </message>
    <message>
        <source>{where}: {error}</source>
        <translation>{where}: {error}</translation>
    </message>
    <message>
        <source>is a still picture; a movement needs a clip</source>
        <translation>es una imagen fija; un movimiento necesita una grabación</translation>
    </message>
    <message>
        <source>is a document, not a video</source>
        <translation>es un documento, no un vídeo</translation>
    </message>
    <message>
        <source>is a text file, not a video</source>
        <translation>es un archivo de texto, no un vídeo</translation>
    </message>
    <message>
        <source>The clip {clip} {finding}.</source>
        <translation>La grabación {clip} {finding}.</translation>
    </message>
    <message>
        <source>{path} is a folder, not a clip. Choose one of the files in it.</source>
        <translation>{path} es una carpeta, no una grabación. Elija uno de sus archivos.</translation>
    </message>
    <message>
        <source>{path} is a device or a pipe, not a recorded clip.</source>
        <translation>{path} es un dispositivo o una tubería, no una grabación.</translation>
    </message>
    <message>
        <source>The clip {clip} is empty (0 bytes). Copy or record it again.</source>
        <translation>La grabación {clip} está vacía (0 bytes). Cópiela o grábela de nuevo.</translation>
    </message>
    <message>
        <source>The clip {clip} cannot be read ({reason}). Copy it to this computer&apos;s own disk and try again.</source>
        <translation>No se puede leer la grabación {clip} ({reason}). Cópiela en el disco de este ordenador y vuelva a intentarlo.</translation>
    </message>
    <message>
        <source>The clip {clip} has a name that is not readable text. Rename it.</source>
        <translation>El nombre de la grabación {clip} no es texto legible. Cámbielo.</translation>
    </message>
    <message>
        <source>The clip {clip} cannot be found ({reason}).</source>
        <translation>No se puede encontrar la grabación {clip} ({reason}).</translation>
    </message>
    <message>
        <source>The picture is only {width} x {height} pixels. At least {least} each way are needed, 640 x 480 are better.</source>
        <translation>La imagen solo tiene {width} x {height} píxeles. Se necesitan al menos {least} de ancho y de alto; es mejor 640 x 480.</translation>
    </message>
    <message>
        <source>Not one picture of the clip {clip} could be decoded. It is damaged; record or copy it again.</source>
        <translation>No se ha podido descodificar ni una sola imagen de la grabación {clip}. Está dañada; grábela o cópiela de nuevo.</translation>
    </message>
    <message>
        <source>The clip {clip} contains no pictures that can be decoded: its beginning is damaged, it has sound only, or it uses an unknown codec. Convert the video to H.264.</source>
        <translation>La grabación {clip} no contiene imágenes que se puedan descodificar: está dañada al principio, solo tiene sonido o usa un códec desconocido. Convierta el vídeo a H.264.</translation>
    </message>
    <message>
        <source>The clip {clip}: {error}</source>
        <translation>La grabación {clip}: {error}</translation>
    </message>
    <message>
        <source>Hold the board still for a moment.</source>
        <translation>Mantenga el tablero quieto un momento.</translation>
    </message>
    <message>
        <source>Move the board to the {where} of the picture and hold it.</source>
        <translation>Lleve el tablero a esta parte de la imagen y manténgalo: {where}.</translation>
    </message>
    <message>
        <source>Add an exercise of the clinician&apos;s own</source>
        <translation>Añadir un ejercicio propio del profesional</translation>
    </message>
    <message>
        <source>pain at which to stop</source>
        <translation>dolor en el que parar</translation>
    </message>
    <message>
        <source>I have no number: use {limit}</source>
        <translation>No tengo ningún número: usar {limit}</translation>
    </message>
    <message>
        <source>This corrects a mistake: the programme keeps its first day</source>
        <translation>Esto corrige un error: el programa conserva su primer día</translation>
    </message>
    <message>
        <source>Enter the exercises that the clinician chose. Thawline adds nothing to them.</source>
        <translation>Introduzca los ejercicios que eligió el profesional. Thawline no les añade nada.</translation>
    </message>
    <message>
        <source>{limit} is Thawline&apos;s usual number, an unverified default.</source>
        <translation>{limit} es el número habitual de Thawline, un valor predeterminado sin verificar.</translation>
    </message>
    <message>
        <source>1: first pain</source>
        <translation>1: primer dolor</translation>
    </message>
    <message>
        <source>Keep editing</source>
        <translation>Seguir editando</translation>
    </message>
    <message>
        <source>Leave without saving</source>
        <translation>Salir sin guardar</translation>
    </message>
    <message>
        <source>Enter the first day as {day}. It cannot be after today.</source>
        <translation>Escriba el primer día así: {day}. No puede ser posterior a hoy.</translation>
    </message>
    <message>
        <source>Enter the review as {day}. It cannot be before today.</source>
        <translation>Escriba la revisión así: {day}. No puede ser anterior a hoy.</translation>
    </message>
    <message>
        <source>Choose at most three movements.</source>
        <translation>Elija como máximo tres movimientos.</translation>
    </message>
    <message>
        <source>who chose it</source>
        <translation>quién lo eligió</translation>
    </message>
    <message>
        <source>Choose the number that the clinician set.</source>
        <translation>Elija el número que fijó el profesional.</translation>
    </message>
    <message>
        <source>Home programme</source>
        <translation>Programa en casa</translation>
    </message>
    <message>
        <source>first day</source>
        <translation>primer día</translation>
    </message>
    <message>
        <source>day of the review</source>
        <translation>día de la revisión</translation>
    </message>
    <message>
        <source>No day set</source>
        <translation>Sin fecha</translation>
    </message>
    <message>
        <source>such as physiotherapist; no name is needed</source>
        <translation>por ejemplo, fisioterapeuta; no hace falta ningún nombre</translation>
    </message>
    <message>
        <source>End the programme</source>
        <translation>Terminar el programa</translation>
    </message>
    <message>
        <source>Ctrl+S</source>
        <translation>Ctrl+S</translation>
    </message>
    <message>
        <source>Choose up to three. If you choose none: external rotation, flexion and hand behind back.</source>
        <translation>Elija hasta tres. Si no elige ninguno: rotación externa, flexión y mano a la espalda.</translation>
    </message>
    <message>
        <source>Starts on</source>
        <translation>Empieza el</translation>
    </message>
    <message>
        <source>Next review with the clinician</source>
        <translation>Próxima revisión con su profesional sanitario</translation>
    </message>
    <message>
        <source>Movements that matter most for judging progress</source>
        <translation>Movimientos que más importan para valorar la evolución</translation>
    </message>
    <message>
        <source>At {limit} the round stops; {allowed} is still allowed.</source>
        <translation>Con {limit} se detiene la ronda; {allowed} todavía se permite.</translation>
    </message>
    <message>
        <source>Leave without saving?</source>
        <translation>¿Salir sin guardar?</translation>
    </message>
    <message>
        <source>What you have changed here will be lost.</source>
        <translation>Se perderá lo que ha cambiado aquí.</translation>
    </message>
    <message>
        <source>An exercise of the clinician&apos;s own needs a name that no other exercise has.</source>
        <translation>Un ejercicio propio del profesional necesita un nombre que no tenga ningún otro ejercicio.</translation>
    </message>
    <message>
        <source>No exercise is ticked yet.</source>
        <translation>Todavía no hay ningún ejercicio marcado.</translation>
    </message>
    <message>
        <source>The camera stays where it is</source>
        <translation>La cámara se queda donde está</translation>
    </message>
    <message>
        <source>Then this level is used on later days too.</source>
        <translation>Así este nivel sirve también otros días.</translation>
    </message>
    <message>
        <source>Take this picture</source>
        <translation>Tomar esta imagen</translation>
    </message>
    <message>
        <source>Another picture</source>
        <translation>Otra imagen</translation>
    </message>
    <message>
        <source>Undo the last mark</source>
        <translation>Deshacer la última marca</translation>
    </message>
    <message>
        <source>Mark again</source>
        <translation>Marcar de nuevo</translation>
    </message>
    <message>
        <source>Save it, or take another picture.</source>
        <translation>Guárdela o tome otra imagen.</translation>
    </message>
    <message>
        <source>These marks do not fit.</source>
        <translation>Estas marcas no encajan.</translation>
    </message>
    <message>
        <source>Stop when the pain reaches</source>
        <translation>Parar cuando el dolor llegue a</translation>
    </message>
    <message>
        <source>Chosen by</source>
        <translation>Elegido por</translation>
    </message>
    <message>
        <source>once a day</source>
        <translation>una vez al día</translation>
    </message>
    <message>
        <source>{exercise}, repetitions</source>
        <translation>{exercise}, repeticiones</translation>
    </message>
    <message>
        <source>{exercise}, how long it is held</source>
        <translation>{exercise}, cuánto se mantiene</translation>
    </message>
    <message>
        <source>{exercise}, times a day</source>
        <translation>{exercise}, veces al día</translation>
    </message>
    <message>
        <source>{exercise}, side</source>
        <translation>{exercise}, lado</translation>
    </message>
    <message>
        <source>{exercise}, note</source>
        <translation>{exercise}, nota</translation>
    </message>
    <message>
        <source>name of the exercise</source>
        <translation>nombre del ejercicio</translation>
    </message>
    <message>
        <source>Name of the exercise</source>
        <translation>Nombre del ejercicio</translation>
    </message>
    <message>
        <source>how it is done</source>
        <translation>cómo se hace</translation>
    </message>
    <message>
        <source>How it is done, in one sentence</source>
        <translation>Cómo se hace, en una frase</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Quitar</translation>
    </message>
    <message>
        <source>own exercise</source>
        <translation>ejercicio propio</translation>
    </message>
    <message>
        <source>Remove: {exercise}</source>
        <translation>Quitar: {exercise}</translation>
    </message>
    <message>
        <source>repetitions not set</source>
        <translation>repeticiones sin fijar</translation>
    </message>
    <message>
        <source>not held</source>
        <translation>sin mantener</translation>
    </message>
    <message>
        <source>Both sides</source>
        <translation>Ambos lados</translation>
    </message>
    <message>
        <source>side not set</source>
        <translation>lado sin fijar</translation>
    </message>
    <message>
        <source>A day earlier</source>
        <translation>Un día antes</translation>
    </message>
    <message>
        <source>A day later</source>
        <translation>Un día después</translation>
    </message>
    <message>
        <source>Calendar</source>
        <translation>Calendario</translation>
    </message>
    <message>
        <source>Calendar: {title}</source>
        <translation>Calendario: {title}</translation>
    </message>
    <message>
        <source>Previous month</source>
        <translation>Mes anterior</translation>
    </message>
    <message>
        <source>Next month</source>
        <translation>Mes siguiente</translation>
    </message>
    <message>
        <source>Month</source>
        <translation>Mes</translation>
    </message>
    <message>
        <source>Year</source>
        <translation>Año</translation>
    </message>
    <message>
        <source>✓  Calibrated at {size} pixels: {field} degrees wide.</source>
        <translation>✓  Calibrada a {size} píxeles: {field} grados de ancho.</translation>
    </message>
    <message>
        <source>✓  {turn} Measured on {day}.</source>
        <translation>✓  {turn} Medido el {day}.</translation>
    </message>
    <message>
        <source>Turned clockwise by {angle} degrees, give or take {half}.</source>
        <translation>Girada {angle} grados a la derecha, con un margen de {half}.</translation>
    </message>
    <message>
        <source>Turned anticlockwise by {angle} degrees, give or take {half}.</source>
        <translation>Girada {angle} grados a la izquierda, con un margen de {half}.</translation>
    </message>
    <message>
        <source>▶  From {day}, no longer used. Measure it again.</source>
        <translation>▶  Del {day}, ya no se usa. Mídalo otra vez.</translation>
    </message>
    <message>
        <source>For an arm near the picture&apos;s edge</source>
        <translation>Para un brazo junto al borde de la imagen</translation>
    </message>
    <message>
        <source>For a camera that stands crooked</source>
        <translation>Para una cámara torcida</translation>
    </message>
    <message>
        <source>It shows the level to within {half}°; {least}° is needed.</source>
        <translation>Da el nivel con un margen de {half}°; hacen falta {least}°.</translation>
    </message>
    <message>
        <source>Mark a longer edge, such as a whole door frame.</source>
        <translation>Marque un borde más largo, como un marco de puerta entero.</translation>
    </message>
    <message>
        <source>For an arm towards the camera</source>
        <translation>Para un brazo hacia la cámara</translation>
    </message>
    <message>
        <source>For the hand behind the back</source>
        <translation>Para la mano detrás de la espalda</translation>
    </message>
    <message>
        <source>Correct {movement} by the study {study} ({pairs} pairs)</source>
        <translation>Corregir {movement} según el estudio {study} ({pairs} pares)</translation>
    </message>
    <message>
        <source>Nothing is saved yet. The next readings save it.</source>
        <translation>Aún no hay nada guardado. Lo guardan las próximas lecturas.</translation>
    </message>
    <message>
        <source>✓  Places saved: {places}.</source>
        <translation>✓  Lugares guardados: {places}.</translation>
    </message>
    <message>
        <source>✓  Measured on {day}.</source>
        <translation>✓  Medido el {day}.</translation>
    </message>
    <message>
        <source>The line is too short.</source>
        <translation>La línea es demasiado corta.</translation>
    </message>
    <message>
        <source>Level: mark an upright edge.</source>
        <translation>Nivel: marque un borde vertical.</translation>
    </message>
    <message>
        <source>Mark the upper end of something upright.</source>
        <translation>Marque el extremo superior de algo vertical.</translation>
    </message>
    <message>
        <source>Mark its lower end, as far away as possible.</source>
        <translation>Marque su extremo inferior, lo más lejos posible.</translation>
    </message>
    <message>
        <source>Save it, or mark the upper end of a second line, well to one side of the first.</source>
        <translation>Guárdela, o marque el extremo superior de otra línea, bien separada de la primera.</translation>
    </message>
    <message>
        <source>Mark the lower end of the second line.</source>
        <translation>Marque el extremo inferior de la segunda línea.</translation>
    </message>
    <message>
        <source>Take a picture with a door frame in it.</source>
        <translation>Tome una imagen en la que se vea un marco de puerta.</translation>
    </message>
    <message>
        <source>Mark its upper end (1) and its lower end (2).</source>
        <translation>Marque su extremo superior (1) y el inferior (2).</translation>
    </message>
    <message>
        <source>Save the level.</source>
        <translation>Guarde el nivel.</translation>
    </message>
    <message>
        <source>Neck at {neck} %, pelvis at {pelvis} % of the way from hips to shoulders.</source>
        <translation>Cuello al {neck} % y pelvis al {pelvis} % del camino de las caderas a los hombros.</translation>
    </message>
    <message>
        <source>Turn your back and let your arms hang.</source>
        <translation>Póngase de espaldas y deje colgar los brazos.</translation>
    </message>
    <message>
        <source>Your helper presses Take this picture.</source>
        <translation>Su ayudante pulsa Tomar esta imagen.</translation>
    </message>
    <message>
        <source>Mark the neck (1) and the two back dimples (2,&#xa0;3).</source>
        <translation>Marque el cuello (1) y los dos hoyuelos de la espalda (2,&#xa0;3).</translation>
    </message>
    <message>
        <source>Save the marks.</source>
        <translation>Guarde las marcas.</translation>
    </message>
    <message>
        <source>Mark the bone that stands out most at the base of the neck.</source>
        <translation>Marque el hueso que más sobresale en la base del cuello.</translation>
    </message>
    <message>
        <source>Mark one of the two dimples above the buttocks.</source>
        <translation>Marque uno de los dos hoyuelos sobre las nalgas.</translation>
    </message>
    <message>
        <source>Mark the other dimple.</source>
        <translation>Marque el otro hoyuelo.</translation>
    </message>
    <message>
        <source>Print it at 100 %. The line on it must measure 100 mm.</source>
        <translation>Imprímalo al 100 %. La línea debe medir 100 mm.</translation>
    </message>
    <message>
        <source>First choose the person on the Measure page.</source>
        <translation>Elija primero a la persona en la página Medir.</translation>
    </message>
    <message>
        <source>First choose the camera on the Set-up page.</source>
        <translation>Elija primero la cámara en la página Preparación.</translation>
    </message>
    <message>
        <source>A table of camera and goniometer readings</source>
        <translation>Una tabla de lecturas de cámara y goniómetro</translation>
    </message>
    <message>
        <source>Readings from now on start a new series.</source>
        <translation>A partir de ahora, las lecturas empiezan una serie nueva.</translation>
    </message>
    <message>
        <source>The board was seen in {share} % of the picture.</source>
        <translation>El tablero se vio en el {share} % de la imagen.</translation>
    </message>
    <message>
        <source>picture to mark</source>
        <translation>imagen para marcar</translation>
    </message>
    <message>
        <source>Arrow keys move the cross, Space marks, Backspace removes the last mark.</source>
        <translation>Las flechas mueven la cruz, Espacio marca, Retroceso quita la última marca.</translation>
    </message>
    <message>
        <source>Person</source>
        <translation>Persona</translation>
    </message>
    <message>
        <source>Stiff shoulder</source>
        <translation>Hombro rígido</translation>
    </message>
    <message>
        <source>Dominant hand</source>
        <translation>Mano dominante</translation>
    </message>
    <message>
        <source>For example March 2026</source>
        <translation>Por ejemplo, marzo de 2026</translation>
    </message>
    <message>
        <source>It began with</source>
        <translation>Empezó con</translation>
    </message>
    <message>
        <source>Age</source>
        <translation>Edad</translation>
    </message>
    <message>
        <source>Diabetes</source>
        <translation>Diabetes</translation>
    </message>
    <message>
        <source>Thyroid disease</source>
        <translation>Enfermedad de tiroides</translation>
    </message>
    <message>
        <source>Only the pseudonym is needed. It need not be a real name.</source>
        <translation>Solo hace falta el seudónimo, que no tiene por qué ser un nombre real.</translation>
    </message>
    <message>
        <source>Stiff since</source>
        <translation>Con rigidez desde</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Guardar</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Pseudonym</source>
        <translation>Seudónimo</translation>
    </message>
    <message>
        <source>Not stated</source>
        <translation>Sin indicar</translation>
    </message>
    <message>
        <source>Yes</source>
        <translation>Sí</translation>
    </message>
    <message>
        <source>No</source>
        <translation>No</translation>
    </message>
    <message>
        <source>Ask later</source>
        <translation>Preguntar más tarde</translation>
    </message>
    <message>
        <source>Start today&apos;s exercises</source>
        <translation>Empezar los ejercicios de hoy</translation>
    </message>
    <message>
        <source>Undo: done for today</source>
        <translation>Deshacer: terminar por hoy</translation>
    </message>
    <message>
        <source>language of the exercise sheet</source>
        <translation>idioma de la hoja de ejercicios</translation>
    </message>
    <message>
        <source>Stop for today: pain reached {pain}.</source>
        <translation>Pare por hoy: el dolor llegó a {pain}.</translation>
    </message>
    <message>
        <source>Exercises on {day}: had your shoulder settled by the next morning?</source>
        <translation>Ejercicios del {day}: ¿se había calmado el hombro a la mañana siguiente?</translation>
    </message>
    <message>
        <source>First choose or add a person on the Measure page.</source>
        <translation>Primero elija o añada a una persona en la página Medir.</translation>
    </message>
    <message>
        <source>Continue today&apos;s exercises</source>
        <translation>Seguir con los ejercicios de hoy</translation>
    </message>
    <message>
        <source>After yesterday&apos;s exercises, had your shoulder settled by this morning?</source>
        <translation>Después de los ejercicios de ayer, ¿se había calmado el hombro esta mañana?</translation>
    </message>
    <message>
        <source>Edit the programme</source>
        <translation>Editar el programa</translation>
    </message>
    <message>
        <source>Done for today</source>
        <translation>Terminar por hoy</translation>
    </message>
    <message>
        <source>Save as PDF</source>
        <translation>Guardar como PDF</translation>
    </message>
    <message>
        <source>Print</source>
        <translation>Imprimir</translation>
    </message>
    <message>
        <source>Logged today</source>
        <translation>Anotado hoy</translation>
    </message>
    <message>
        <source>Exercise sheet</source>
        <translation>Hoja de ejercicios</translation>
    </message>
    <message>
        <source>Your exercises with drawings, on paper.</source>
        <translation>Sus ejercicios con dibujos, en papel.</translation>
    </message>
    <message>
        <source>No exercises yet.</source>
        <translation>Aún no hay ejercicios.</translation>
    </message>
    <message>
        <source>Exercises: {person}</source>
        <translation>Ejercicios: {person}</translation>
    </message>
    <message>
        <source>Enter the exercises</source>
        <translation>Introducir los ejercicios</translation>
    </message>
    <message>
        <source>{name} is made up: nothing is logged.</source>
        <translation>{name} es una persona inventada: no se anota nada.</translation>
    </message>
    <message>
        <source>Everything planned for today is logged.</source>
        <translation>Todo lo previsto para hoy está anotado.</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Deshacer</translation>
    </message>
    <message>
        <source>Undo: {exercises}</source>
        <translation>Deshacer: {exercises}</translation>
    </message>
    <message>
        <source>How consistent my sessions are</source>
        <translation>Cuánto varían mis sesiones</translation>
    </message>
    <message>
        <source>Sessions differ a little even when nothing changes.</source>
        <translation>Las sesiones difieren un poco aunque nada cambie.</translation>
    </message>
    <message>
        <source>Nine of ten repeat sessions differ by less.</source>
        <translation>Nueve de cada diez repeticiones varían menos.</translation>
    </message>
    <message>
        <source>How much change is likely real?</source>
        <translation>¿Qué cambio es real?</translation>
    </message>
    <message>
        <source>{amount} or more is likely a real change.</source>
        <translation>{amount} o más: probable cambio real.</translation>
    </message>
    <message>
        <source>From {count} recorded sessions.</source>
        <translation>Según {count} sesiones registradas.</translation>
    </message>
    <message>
        <source>A typical value until there are {enough} sessions; so far {count}.</source>
        <translation>Valor típico hasta que haya {enough} sesiones; por ahora {count}.</translation>
    </message>
    <message>
        <source>Drift per week: {value} ({low} to {high}).</source>
        <translation>Deriva por semana: {value} (de {low} a {high}).</translation>
    </message>
    <message>
        <source>There are no readings yet. In several sessions, measure a shoulder that is not expected to change.</source>
        <translation>Todavía no hay lecturas. Mida en varias sesiones un hombro que no se espera que cambie.</translation>
    </message>
    <message>
        <source>Movement</source>
        <translation>Movimiento</translation>
    </message>
    <message>
        <source>Legend: {words}</source>
        <translation>Leyenda: {words}</translation>
    </message>
    <message>
        <source>likely course after exercises (95 %)</source>
        <translation>evolución probable tras los ejercicios (95 %)</translation>
    </message>
    <message>
        <source>likely course (95 %)</source>
        <translation>evolución probable (95 %)</translation>
    </message>
    <message>
        <source>range of a reading</source>
        <translation>intervalo de una lectura</translation>
    </message>
    <message>
        <source>practice session</source>
        <translation>sesión de práctica</translation>
    </message>
    <message>
        <source>after exercises</source>
        <translation>después de los ejercicios</translation>
    </message>
    <message>
        <source>before exercises</source>
        <translation>antes de los ejercicios</translation>
    </message>
    <message>
        <source>before or after exercises, unlike the line</source>
        <translation>antes o después de los ejercicios, a diferencia de la línea</translation>
    </message>
    <message>
        <source>4 weeks</source>
        <translation>4 semanas</translation>
    </message>
    <message>
        <source>3 months</source>
        <translation>3 meses</translation>
    </message>
    <message>
        <source>All dates</source>
        <translation>Todas las fechas</translation>
    </message>
    <message>
        <source>{day}, {side}: {reading}</source>
        <translation>{day}, {side}: {reading}</translation>
    </message>
    <message>
        <source>Practice: shown, not counted</source>
        <translation>Práctica: se muestra, no cuenta</translation>
    </message>
    <message>
        <source>On another line: measured after exercises, or before them</source>
        <translation>En otra línea: medida después de los ejercicios, o antes</translation>
    </message>
    <message>
        <source>Pain {pain} of 10</source>
        <translation>Dolor {pain} de 10</translation>
    </message>
    <message>
        <source>Chart: {movement}</source>
        <translation>Gráfico: {movement}</translation>
    </message>
    <message>
        <source>{movement}: {plainly}</source>
        <translation>{movement}: {plainly}</translation>
    </message>
    <message>
        <source>the left arm</source>
        <translation>el brazo izquierdo</translation>
    </message>
    <message>
        <source>the right arm</source>
        <translation>el brazo derecho</translation>
    </message>
    <message>
        <source>Readings of {sides} on {first}: {count}; without a result: {refused}.</source>
        <translation>Lecturas de {sides} el {first}: {count}; sin resultado: {refused}.</translation>
    </message>
    <message>
        <source>Readings of {sides} from {first} to {last}: {count}; without a result: {refused}.</source>
        <translation>Lecturas de {sides} del {first} al {last}: {count}; sin resultado: {refused}.</translation>
    </message>
    <message>
        <source>both arms</source>
        <translation>ambos brazos</translation>
    </message>
    <message>
        <source>Left and right arrow keys go from reading to reading; Enter opens the session.</source>
        <translation>Las flechas izquierda y derecha van de lectura en lectura; Intro abre la sesión.</translation>
    </message>
    <message>
        <source>What was seen</source>
        <translation>Qué se observó</translation>
    </message>
    <message>
        <source>Save the report</source>
        <translation>Guardar el informe</translation>
    </message>
    <message>
        <source>Please measure again on another day: {tasks}</source>
        <translation>Vuelva a medir otro día: {tasks}</translation>
    </message>
    <message>
        <source>Please show this to your clinician</source>
        <translation>Muestre esto a su profesional sanitario</translation>
    </message>
    <message>
        <source>Left compared with right</source>
        <translation>Izquierdo comparado con el derecho</translation>
    </message>
    <message>
        <source>Right compared with left</source>
        <translation>Derecho comparado con el izquierdo</translation>
    </message>
    <message>
        <source>{movement}: {words}.</source>
        <translation>{movement}: {words}.</translation>
    </message>
    <message>
        <source>Range compared with the other side</source>
        <translation>Amplitud en comparación con el otro lado</translation>
    </message>
    <message>
        <source>My goals</source>
        <translation>Mis metas</translation>
    </message>
    <message>
        <source>What I want to do again</source>
        <translation>Lo que quiero volver a hacer</translation>
    </message>
    <message>
        <source>Rated once a month: 0 not possible at all, 10 as well as before.</source>
        <translation>Se valora una vez al mes: 0 imposible, 10 tan bien como antes.</translation>
    </message>
    <message>
        <source>Name up to three things in your own words, such as putting on a jacket, and rate once a month how well they go.</source>
        <translation>Nombre hasta tres cosas con sus propias palabras, como ponerse una chaqueta, y valore una vez al mes cómo le van.</translation>
    </message>
    <message>
        <source>{goal}: {ratings}</source>
        <translation>{goal}: {ratings}</translation>
    </message>
    <message>
        <source>Not rated so far.</source>
        <translation>Sin valorar hasta ahora.</translation>
    </message>
    <message>
        <source>{rating} of 10 on {day}</source>
        <translation>{rating} de 10 el {day}</translation>
    </message>
    <message>
        <source>{first} on {day}, then {latest}.</source>
        <translation>{first} el {day}, después {latest}.</translation>
    </message>
    <message>
        <source>a goal in your own words</source>
        <translation>una meta con sus propias palabras</translation>
    </message>
    <message>
        <source>Three goals are enough: end one to name another.</source>
        <translation>Tres metas bastan: termine una para nombrar otra.</translation>
    </message>
    <message>
        <source>Rate them about once a month.</source>
        <translation>Valórelas más o menos una vez al mes.</translation>
    </message>
    <message>
        <source>Goals: {person}</source>
        <translation>Metas: {person}</translation>
    </message>
    <message>
        <source>What would you like to do again?</source>
        <translation>¿Qué le gustaría volver a hacer?</translation>
    </message>
    <message>
        <source>Such as: put on a jacket</source>
        <translation>P. ej.: ponerme una chaqueta</translation>
    </message>
    <message>
        <source>Add a goal</source>
        <translation>Añadir una meta</translation>
    </message>
    <message>
        <source>You can name up to three.</source>
        <translation>Puede nombrar hasta tres.</translation>
    </message>
    <message>
        <source>Nothing is calculated from the ratings.</source>
        <translation>Con las valoraciones no se calcula nada.</translation>
    </message>
    <message>
        <source>They appear below the charts, in your words.</source>
        <translation>Aparecen debajo de los gráficos, con sus palabras.</translation>
    </message>
    <message>
        <source>Save goal</source>
        <translation>Guardar la meta</translation>
    </message>
    <message>
        <source>End this goal</source>
        <translation>Terminar esta meta</translation>
    </message>
    <message>
        <source>End the goal: {goal}</source>
        <translation>Terminar la meta: {goal}</translation>
    </message>
    <message>
        <source>Rated today.</source>
        <translation>Valorado hoy.</translation>
    </message>
    <message>
        <source>Next rating from {day} on.</source>
        <translation>Próxima valoración a partir del {day}.</translation>
    </message>
    <message>
        <source>10: as well as before</source>
        <translation>10: tan bien como antes</translation>
    </message>
    <message>
        <source>How well does it go today?</source>
        <translation>¿Cómo le va hoy?</translation>
    </message>
    <message>
        <source>0: not possible at all</source>
        <translation>0: imposible</translation>
    </message>
    <message>
        <source>By exercise</source>
        <translation>Por ejercicio</translation>
    </message>
    <message>
        <source>What to expect</source>
        <translation>Qué se puede esperar</translation>
    </message>
    <message>
        <source>A stiff shoulder usually takes many months to loosen. Most people gain more in the first months and less later, with times of no clear change in between: slow progress is usual. Some stiffness may stay. No one can say beforehand how yours will go.</source>
        <translation>Un hombro rígido suele tardar muchos meses en soltarse. La mayoría de las personas mejora más en los primeros meses y menos después, con temporadas sin ningún cambio claro: lo habitual es avanzar despacio. Puede quedar algo de rigidez. Nadie puede decir de antemano cómo irá el suyo.</translation>
    </message>
    <message>
        <source>Progress: {person}</source>
        <translation>Evolución: {person}</translation>
    </message>
    <message>
        <source>no reading</source>
        <translation>sin lectura</translation>
    </message>
    <message>
        <source>drawing on the body, {side} arm: {words}</source>
        <translation>dibujo sobre el cuerpo, brazo {side}: {words}</translation>
    </message>
    <message>
        <source>The last trial is deleted. You can undo this until the movement ends.</source>
        <translation>Se ha borrado el último intento. Puede deshacerlo hasta que termine el movimiento.</translation>
    </message>
    <message>
        <source>Undone.</source>
        <translation>Deshecho.</translation>
    </message>
    <message>
        <source>Ctrl Z</source>
        <translation>Ctrl Z</translation>
    </message>
    <message>
        <source>Close the message</source>
        <translation>Cerrar el mensaje</translation>
    </message>
    <message>
        <source>It holds {people}, {sessions} and {measurements}.</source>
        <translation>Contiene {people}, {sessions} y {measurements}.</translation>
    </message>
    <message>
        <source>1 person</source>
        <translation>1 persona</translation>
    </message>
    <message>
        <source>{number} people</source>
        <translation>{number} personas</translation>
    </message>
    <message>
        <source>1 session</source>
        <translation>1 sesión</translation>
    </message>
    <message>
        <source>{number} sessions</source>
        <translation>{number} sesiones</translation>
    </message>
    <message>
        <source>1 measurement</source>
        <translation>1 medición</translation>
    </message>
    <message>
        <source>{number} measurements</source>
        <translation>{number} mediciones</translation>
    </message>
    <message>
        <source>Make a backup...</source>
        <translation>Hacer una copia de seguridad...</translation>
    </message>
    <message>
        <source>Restore a backup...</source>
        <translation>Restaurar una copia de seguridad...</translation>
    </message>
    <message>
        <source>Working</source>
        <translation>Trabajando</translation>
    </message>
    <message>
        <source>Saves everything in one new file and checks it.</source>
        <translation>Guarda todo en un archivo nuevo y lo comprueba.</translation>
    </message>
    <message>
        <source>It is not encrypted: keep it where only you can reach it.</source>
        <translation>No está cifrada: guárdela donde solo usted pueda acceder a ella.</translation>
    </message>
    <message>
        <source>Replaces everything saved here with a backup. What is here now stays in a separate file.</source>
        <translation>Sustituye todo lo guardado aquí por una copia de seguridad. Lo que hay ahora queda en un archivo aparte.</translation>
    </message>
    <message>
        <source>Backup</source>
        <translation>Copia de seguridad</translation>
    </message>
    <message>
        <source>Restore</source>
        <translation>Restauración</translation>
    </message>
    <message>
        <source>The latest backup made here: {file}, {day}.</source>
        <translation>La última copia de seguridad hecha aquí: {file}, {day}.</translation>
    </message>
    <message>
        <source>Make a backup</source>
        <translation>Hacer una copia de seguridad</translation>
    </message>
    <message>
        <source>The backup is saved as {file}.</source>
        <translation>La copia de seguridad se guardó como {file}.</translation>
    </message>
    <message>
        <source>Restore a backup</source>
        <translation>Restaurar una copia de seguridad</translation>
    </message>
    <message>
        <source>You can undo this until Thawline is closed.</source>
        <translation>Puede deshacerlo hasta que se cierre Thawline.</translation>
    </message>
    <message>
        <source>Replace everything here with this backup?</source>
        <translation>¿Sustituir todo lo que hay aquí por esta copia de seguridad?</translation>
    </message>
    <message>
        <source>Leave everything as it is</source>
        <translation>Dejarlo todo como está</translation>
    </message>
    <message>
        <source>Replace with the backup</source>
        <translation>Sustituir por la copia</translation>
    </message>
    <message>
        <source>The backup is restored.</source>
        <translation>Se ha restaurado la copia de seguridad.</translation>
    </message>
    <message>
        <source>A backup was restored. You can undo this until Thawline is closed.</source>
        <translation>Se ha restaurado una copia de seguridad. Puede deshacerlo hasta que se cierre Thawline.</translation>
    </message>
    <message>
        <source>Standard</source>
        <translation>Estándar</translation>
    </message>
    <message>
        <source>Fast</source>
        <translation>Rápido</translation>
    </message>
    <message>
        <source>Detailed</source>
        <translation>Detallado</translation>
    </message>
    <message>
        <source>The standard level is here, so you can measure. The other levels come only through the program npm, which is part of Node.js. Install it if you want them, then press “Download now” again.</source>
        <translation>El nivel estándar está aquí, así que ya puede medir. Los demás niveles solo se obtienen con el programa npm, que forma parte de Node.js. Instálelo si los desea y pulse «Descargar ahora» otra vez.</translation>
    </message>
    <message>
        <source>The download failed. Check the internet connection, then press “Download now” again. If this computer has no internet access, copy the files whose names begin with “pose-” from another computer with Thawline into this folder: {folder}</source>
        <translation>La descarga no se ha completado. Compruebe la conexión a internet y pulse «Descargar ahora» otra vez. Si este ordenador no tiene acceso a internet, copie los archivos cuyo nombre empieza por «pose-» de otro ordenador con Thawline a esta carpeta: {folder}</translation>
    </message>
    <message>
        <source>Details: {causes}</source>
        <translation>Detalles: {causes}</translation>
    </message>
    <message>
        <source>Download</source>
        <translation>Descarga</translation>
    </message>
    <message>
        <source>Download now</source>
        <translation>Descargar ahora</translation>
    </message>
    <message>
        <source>Cancel the download</source>
        <translation>Cancelar la descarga</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Tamaño</translation>
    </message>
    <message>
        <source>Version</source>
        <translation>Versión</translation>
    </message>
    <message>
        <source>Not complete on this computer</source>
        <translation>No está completo en este equipo</translation>
    </message>
    <message>
        <source>Downloading. You can keep using Thawline meanwhile.</source>
        <translation>Descargando. Mientras tanto puede seguir usando Thawline.</translation>
    </message>
    <message>
        <source>○  {level}: not installed</source>
        <translation>○  {level}: sin instalar</translation>
    </message>
    <message>
        <source>Nothing to do, and nothing is sent.</source>
        <translation>No hay nada que hacer y no se envía nada.</translation>
    </message>
    <message>
        <source>Ready on this computer</source>
        <translation>Listo en este equipo</translation>
    </message>
    <message>
        <source>✓  {level}: ready</source>
        <translation>✓  {level}: listo</translation>
    </message>
    <message>
        <source>Downloading is the only time Thawline uses the network. About {megabytes} MB come from the public package registry, through the package program of this computer (npm or pip). Nothing about you is sent. The files are checked before they are used.</source>
        <translation>La descarga es la única ocasión en que Thawline usa la red. Se reciben unos {megabytes} MB del registro público de paquetes, mediante el programa de paquetes de este ordenador (npm o pip). No se envía nada sobre usted. Los archivos se comprueban antes de usarlos.</translation>
    </message>
    <message>
        <source>Thawline finds the body in the picture with a model that is downloaded once and then stays on this computer. Without it, nothing can be measured.</source>
        <translation>Thawline reconoce el cuerpo en la imagen con un modelo que se descarga una vez y se queda en este ordenador. Sin él no se puede medir nada.</translation>
    </message>
    <message>
        <source>Add, edit, choose or delete people.</source>
        <translation>Añadir, editar, elegir o borrar personas.</translation>
    </message>
    <message>
        <source>Results as a file, and back from a file.</source>
        <translation>Resultados a un archivo y desde un archivo.</translation>
    </message>
    <message>
        <source>Everything in one file, and how to restore it.</source>
        <translation>Todo en un archivo, y cómo recuperarlo.</translation>
    </message>
    <message>
        <source>What, where, how long, and who can read it.</source>
        <translation>Qué, dónde, cuánto tiempo y quién puede leerlo.</translation>
    </message>
    <message>
        <source>The model that finds the body in the picture.</source>
        <translation>El modelo que encuentra el cuerpo en la imagen.</translation>
    </message>
    <message>
        <source>People</source>
        <translation>Personas</translation>
    </message>
    <message>
        <source>Export and import</source>
        <translation>Exportar e importar</translation>
    </message>
    <message>
        <source>Backup and restore</source>
        <translation>Copias de seguridad</translation>
    </message>
    <message>
        <source>What is saved</source>
        <translation>Qué se guarda</translation>
    </message>
    <message>
        <source>Body tracking</source>
        <translation>Seguimiento del cuerpo</translation>
    </message>
    <message>
        <source>Names need not be real; only you must know them.</source>
        <translation>No hace falta usar nombres reales; basta con que usted los reconozca.</translation>
    </message>
    <message>
        <source>No one has been added yet.</source>
        <translation>Todavía no se ha añadido a nadie.</translation>
    </message>
    <message>
        <source>Open progress: {name}</source>
        <translation>Abrir el progreso: {name}</translation>
    </message>
    <message>
        <source>Edit {name}</source>
        <translation>Editar a {name}</translation>
    </message>
    <message>
        <source>Stiff shoulder: {side}</source>
        <translation>Hombro rígido: {side}</translation>
    </message>
    <message>
        <source>✓ Currently chosen</source>
        <translation>✓ Elegida actualmente</translation>
    </message>
    <message>
        <source>Delete everything that is saved about you?</source>
        <translation>¿Borrar todo lo que se ha guardado sobre usted?</translation>
    </message>
    <message>
        <source>Delete {name} and everything saved about them?</source>
        <translation>¿Borrar a {name} y todo lo que se ha guardado sobre esta persona?</translation>
    </message>
    <message>
        <source>You can undo this until Thawline is closed, but not after that. Exports, reports and backups made earlier stay as they are.</source>
        <translation>Puede deshacerlo hasta que se cierre Thawline, pero no después. Las exportaciones, los informes y las copias de seguridad hechos antes se quedan como están.</translation>
    </message>
    <message>
        <source>Everything saved about you is deleted. You can undo this until Thawline is closed.</source>
        <translation>Se ha borrado todo lo que se había guardado sobre usted. Puede deshacerlo hasta que se cierre Thawline.</translation>
    </message>
    <message>
        <source>Delete my data</source>
        <translation>Borrar mis datos</translation>
    </message>
    <message>
        <source>Delete {name}</source>
        <translation>Borrar a {name}</translation>
    </message>
    <message>
        <source>1 session is deleted.</source>
        <translation>Se borra 1 sesión.</translation>
    </message>
    <message>
        <source>{count} sessions are deleted.</source>
        <translation>Se borran {count} sesiones.</translation>
    </message>
    <message>
        <source>No session yet</source>
        <translation>Aún sin sesiones</translation>
    </message>
    <message>
        <source>Sessions: {count}, the last on {day}</source>
        <translation>Sesiones: {count}; la última, el {day}</translation>
    </message>
    <message>
        <source>Measure {name}</source>
        <translation>Medir a {name}</translation>
    </message>
    <message>
        <source>New person</source>
        <translation>Persona nueva</translation>
    </message>
    <message>
        <source>Do not delete</source>
        <translation>No borrar</translation>
    </message>
    <message>
        <source>{name} is deleted. You can undo this until Thawline is closed.</source>
        <translation>Se ha borrado a {name}. Puede deshacerlo hasta que se cierre Thawline.</translation>
    </message>
    <message>
        <source>your account and administrators</source>
        <translation>su cuenta y los administradores</translation>
    </message>
    <message>
        <source>others too</source>
        <translation>también otras personas</translation>
    </message>
    <message>
        <source>only you</source>
        <translation>solo usted</translation>
    </message>
    <message>
        <source>Open the folder</source>
        <translation>Abrir la carpeta</translation>
    </message>
    <message>
        <source>Nothing is sent anywhere. No picture or video is saved unless you ask.</source>
        <translation>No se envía nada a ninguna parte. No se guarda ninguna imagen ni ningún vídeo si usted no lo pide.</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>Privacy</source>
        <translation>Privacidad</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>How long</source>
        <translation>Cuánto tiempo</translation>
    </message>
    <message>
        <source>Online</source>
        <translation>Conexión</translation>
    </message>
    <message>
        <source>Encryption</source>
        <translation>Cifrado</translation>
    </message>
    <message>
        <source>One person: under “People”. Everything: close Thawline and delete this folder.</source>
        <translation>Una persona: en «Personas». Todo: cierre Thawline y borre esta carpeta.</translation>
    </message>
    <message>
        <source>Only to download the body tracking model, when you ask for it.</source>
        <translation>Solo para descargar el modelo de seguimiento del cuerpo, cuando usted lo pide.</translation>
    </message>
    <message>
        <source>None: turn on the disk encryption of your system.</source>
        <translation>Ninguno: active el cifrado de disco de su sistema.</translation>
    </message>
    <message>
        <source>Deleting</source>
        <translation>Borrar</translation>
    </message>
    <message>
        <source>under 1 kB</source>
        <translation>menos de 1 kB</translation>
    </message>
    <message>
        <source>Can be read by: {readers}</source>
        <translation>Puede leerlo: {readers}</translation>
    </message>
    <message>
        <source>Nothing is saved yet.</source>
        <translation>Todavía no hay nada guardado.</translation>
    </message>
    <message>
        <source>Table for a spreadsheet</source>
        <translation>Tabla para hoja de cálculo</translation>
    </message>
    <message>
        <source>Table for other programs</source>
        <translation>Tabla para otros programas</translation>
    </message>
    <message>
        <source>Everything, to import again</source>
        <translation>Todo, para volver a importar</translation>
    </message>
    <message>
        <source>For a health record</source>
        <translation>Para la historia clínica</translation>
    </message>
    <message>
        <source>One row per trial, for any spreadsheet program.</source>
        <translation>Una fila por intento, para cualquier hoja de cálculo.</translation>
    </message>
    <message>
        <source>One row per trial, with commas and decimal points (CSV).</source>
        <translation>Una fila por intento, con comas y punto decimal (CSV).</translation>
    </message>
    <message>
        <source>The only format that Thawline can import, here or elsewhere (JSON).</source>
        <translation>El único formato que Thawline puede importar, aquí o en otro ordenador (JSON).</translation>
    </message>
    <message>
        <source>The readings as observations of the FHIR standard, release 4.</source>
        <translation>Las lecturas como observaciones del estándar FHIR, versión 4.</translation>
    </message>
    <message>
        <source>Decimal comma: 1,5</source>
        <translation>Coma decimal: 1,5</translation>
    </message>
    <message>
        <source>Decimal point: 1.5</source>
        <translation>Punto decimal: 1.5</translation>
    </message>
    <message>
        <source>Format</source>
        <translation>Formato</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Exportar</translation>
    </message>
    <message>
        <source>Decimal sign</source>
        <translation>Signo decimal</translation>
    </message>
    <message>
        <source>Export to a file...</source>
        <translation>Exportar archivo...</translation>
    </message>
    <message>
        <source>Import a file...</source>
        <translation>Importar archivo...</translation>
    </message>
    <message>
        <source>Name and notes are in the file: share it with care.</source>
        <translation>El archivo contiene el nombre y las notas: compártalo con cuidado.</translation>
    </message>
    <message>
        <source>On this computer, only your account can read it.</source>
        <translation>En este ordenador, solo su cuenta puede leerlo.</translation>
    </message>
    <message>
        <source>Adds what is missing here; what is here stays as it is.</source>
        <translation>Añade lo que falta aquí; lo que ya está se queda como está.</translation>
    </message>
    <message>
        <source>Import</source>
        <translation>Importación</translation>
    </message>
    <message>
        <source>Person: {name}</source>
        <translation>Persona: {name}</translation>
    </message>
    <message>
        <source>Export to a file</source>
        <translation>Exportar a un archivo</translation>
    </message>
    <message>
        <source>Exported to {file}. Sessions: {sessions}, measurements: {measurements}.</source>
        <translation>Exportado a {file}. Sesiones: {sessions}, mediciones: {measurements}.</translation>
    </message>
    <message>
        <source>Import a file</source>
        <translation>Importar un archivo</translation>
    </message>
    <message>
        <source>Exported histories ({endings})</source>
        <translation>Historiales exportados ({endings})</translation>
    </message>
    <message>
        <source>Imported as a new person: {name}.</source>
        <translation>Importado como persona nueva: {name}.</translation>
    </message>
    <message>
        <source>{name} was already here.</source>
        <translation>{name} ya estaba aquí.</translation>
    </message>
    <message>
        <source>Records added: {added}. Already here: {same}.</source>
        <translation>Registros añadidos: {added}. Ya estaban: {same}.</translation>
    </message>
    <message>
        <source>page {page} of {pages}</source>
        <translation>página {page} de {pages}</translation>
    </message>
    <message>
        <source>{value}, from {low} to {high}</source>
        <translation>{value}, de {low} a {high}</translation>
    </message>
    <message>
        <source>{movement} over time</source>
        <translation>{movement} a lo largo del tiempo</translation>
    </message>
    <message>
        <source>Pain, 0 to 10</source>
        <translation>Dolor, de 0 a 10</translation>
    </message>
    <message>
        <source>Days with exercises logged</source>
        <translation>Días con ejercicios anotados</translation>
    </message>
    <message>
        <source>pain over time, and days with exercises logged</source>
        <translation>dolor a lo largo del tiempo y días con ejercicios anotados</translation>
    </message>
    <message>
        <source>turn</source>
        <translation>giro</translation>
    </message>
    <message>
        <source>, {rating} of 10 on {day}</source>
        <translation>, {rating} de 10 el {day}</translation>
    </message>
    <message>
        <source>Wants to do again: {goals}.</source>
        <translation>Quiere volver a hacer: {goals}.</translation>
    </message>
    <message>
        <source>{movement}, {side}: {words}</source>
        <translation>{movement}, {side}: {words}</translation>
    </message>
    <message>
        <source>Measured by hand on {day}: {values}.</source>
        <translation>Medido a mano el {day}: {values}.</translation>
    </message>
    <message>
        <source>Shoulder motion: {name} (demo data)</source>
        <translation>Movilidad del hombro: {name} (datos de demostración)</translation>
    </message>
    <message>
        <source>Shoulder motion: {name}</source>
        <translation>Movilidad del hombro: {name}</translation>
    </message>
    <message>
        <source>A report needs at least one session.</source>
        <translation>Un informe necesita al menos una sesión.</translation>
    </message>
    <message>
        <source>Nothing measured yet</source>
        <translation>Aún no se ha medido nada</translation>
    </message>
    <message>
        <source>First and last readings, change and trend</source>
        <translation>Primeras y últimas lecturas, cambio y tendencia</translation>
    </message>
    <message>
        <source>Over time</source>
        <translation>A lo largo del tiempo</translation>
    </message>
    <message>
        <source>Open: practice. Crosses: not measured. Bands: 95 % intervals; line: trend of up to {weeks} weeks. Dashed: events; where thicker, a new series starts. Pain: diamond, worst in 24 hours; dash, at night; triangle, during a movement.</source>
        <translation>Hueco: práctica. Cruces: sin medición. Bandas: intervalos del 95 %; línea: tendencia de hasta {weeks} semanas. Discontinuas: acontecimientos; gruesas, serie nueva. Dolor: rombo, peor en 24 horas; raya, noche; triángulo, al moverse.</translation>
    </message>
    <message>
        <source>Worth discussing</source>
        <translation>Conviene comentar</translation>
    </message>
    <message>
        <source>Charts show at most {days} days; over long periods one band is one week.</source>
        <translation>Los gráficos muestran como máximo {days} días; en periodos largos una banda es una semana.</translation>
    </message>
    <message>
        <source>What was not measured</source>
        <translation>Lo que no se midió</translation>
    </message>
    <message>
        <source>The course in words</source>
        <translation>La evolución en palabras</translation>
    </message>
    <message>
        <source>Round: left; square: right. Black: the affected side; grey: the other.</source>
        <translation>Redondo: izquierdo; cuadrado: derecho. Negro: el lado afectado; gris: el otro.</translation>
    </message>
    <message>
        <source>Round and black: left; square and grey: right.</source>
        <translation>Redondo y negro: izquierdo; cuadrado y gris: derecho.</translation>
    </message>
    <message>
        <source>Everyday tasks</source>
        <translation>Tareas cotidianas</translation>
    </message>
    <message>
        <source>How it was measured</source>
        <translation>Cómo se midió</translation>
    </message>
    <message>
        <source>How to read this</source>
        <translation>Cómo leer este informe</translation>
    </message>
    <message>
        <source>Home programme since {day}: {exercises}; stop at pain {limit} of 10.</source>
        <translation>Programa en casa desde el {day}: {exercises}; parar con un dolor de {limit} de 10.</translation>
    </message>
    <message>
        <source>Chosen by: {role}.</source>
        <translation>Elegido por: {role}.</translation>
    </message>
    <message>
        <source>Next review: {day}.</source>
        <translation>Próxima revisión: {day}.</translation>
    </message>
    <message>
        <source>since {when}</source>
        <translation>desde {when}</translation>
    </message>
    <message>
        <source>Made on {day}.</source>
        <translation>Hecho el {day}.</translation>
    </message>
    <message>
        <source>Made on {day} from one session, {first}.</source>
        <translation>Hecho el {day} con una sesión, del {first}.</translation>
    </message>
    <message>
        <source>Made on {day} from {count} sessions, {first} to {last}.</source>
        <translation>Hecho el {day} con {count} sesiones, del {first} al {last}.</translation>
    </message>
    <message>
        <source>{day}: {what}</source>
        <translation>{day}: {what}</translation>
    </message>
    <message>
        <source>, {side} side</source>
        <translation>, lado {side}</translation>
    </message>
    <message>
        <source>worst in 24 hours {rating}</source>
        <translation>el peor en 24 horas {rating}</translation>
    </message>
    <message>
        <source>at night {rating}</source>
        <translation>por la noche {rating}</translation>
    </message>
    <message>
        <source>at rest {rating}</source>
        <translation>en reposo {rating}</translation>
    </message>
    <message>
        <source>in exercises up to {rating}</source>
        <translation>en los ejercicios hasta {rating}</translation>
    </message>
    <message>
        <source>Latest answers, {day}: {answers}.</source>
        <translation>Últimas respuestas, {day}: {answers}.</translation>
    </message>
    <message>
        <source>during movement up to {rating}, {movement}</source>
        <translation>durante el movimiento hasta {rating}, {movement}</translation>
    </message>
    <message>
        <source>stopped by {what}: {movements}</source>
        <translation>límite por {what}: {movements}</translation>
    </message>
    <message>
        <source>Highest in {weeks} weeks: {rating} on {day}, {what}.</source>
        <translation>Máximo en {weeks} semanas: {rating} el {day}, {what}.</translation>
    </message>
    <message>
        <source>pain {rating} of 10 {what} on {day}</source>
        <translation>dolor {rating} de 10 {what} el {day}</translation>
    </message>
    <message>
        <source>pain {rating} of 10 {what} on {day} (the programme stops at {limit})</source>
        <translation>dolor {rating} de 10 {what} el {day} (el programa se detiene en {limit})</translation>
    </message>
    <message>
        <source>worst in 24 hours</source>
        <translation>el peor en 24 horas</translation>
    </message>
    <message>
        <source>at night</source>
        <translation>por la noche</translation>
    </message>
    <message>
        <source>at rest</source>
        <translation>en reposo</translation>
    </message>
    <message>
        <source>during {movement}</source>
        <translation>durante {movement}</translation>
    </message>
    <message>
        <source>in the exercise {exercise}</source>
        <translation>en el ejercicio {exercise}</translation>
    </message>
    <message>
        <source>{movement} ({side})</source>
        <translation>{movement} ({side})</translation>
    </message>
    <message>
        <source>Pain at rest, at night and in 24 hours was not rated in the last two weeks.</source>
        <translation>En las últimas dos semanas no se valoró el dolor en reposo, por la noche ni en 24 horas.</translation>
    </message>
    <message>
        <source>pain {rating}</source>
        <translation>dolor {rating}</translation>
    </message>
    <message>
        <source>Pain in the last two weeks, 0 to 10, median and range: {ratings}.</source>
        <translation>Dolor en las dos últimas semanas, de 0 a 10, mediana y extremos: {ratings}.</translation>
    </message>
    <message>
        <source>stopped by {what} {times}</source>
        <translation>detenido por {what} {times}</translation>
    </message>
    <message>
        <source>During movement in the last four weeks, affected side. {movements}.</source>
        <translation>Durante el movimiento en las cuatro últimas semanas, lado afectado. {movements}.</translation>
    </message>
    <message>
        <source>During movement in the last four weeks, both sides. {movements}.</source>
        <translation>Durante el movimiento en las cuatro últimas semanas, ambos lados. {movements}.</translation>
    </message>
    <message>
        <source>Since the clinic visit on {day}, {side} side: {changes}.</source>
        <translation>Desde la consulta del {day}, lado {side}: {changes}.</translation>
    </message>
    <message>
        <source>once</source>
        <translation>una vez</translation>
    </message>
    <message>
        <source>{count} times</source>
        <translation>{count} veces</translation>
    </message>
    <message>
        <source>{instrument} ({count} of {total} measurements).</source>
        <translation>{instrument} ({count} de {total} mediciones).</translation>
    </message>
    <message>
        <source>{count} other ways of measuring were used as well.</source>
        <translation>Se usaron además otras {count} formas de medir.</translation>
    </message>
    <message>
        <source>height of the thumb between hips and neck</source>
        <translation>altura del pulgar entre las caderas y el cuello</translation>
    </message>
    <message>
        <source>not named</source>
        <translation>sin nombre</translation>
    </message>
    <message>
        <source>Model: {name}</source>
        <translation>Modelo: {name}</translation>
    </message>
    <message>
        <source>camera: {name}, lens calibrated</source>
        <translation>cámara: {name}, lente calibrada</translation>
    </message>
    <message>
        <source>camera: {name}, lens not calibrated</source>
        <translation>cámara: {name}, lente sin calibrar</translation>
    </message>
    <message>
        <source>correction against a goniometer: {study}</source>
        <translation>corrección con goniómetro: {study}</translation>
    </message>
    <message>
        <source>no correction against a goniometer</source>
        <translation>sin corrección con goniómetro</translation>
    </message>
    <message>
        <source>software: {versions}</source>
        <translation>programas: {versions}</translation>
    </message>
    <message>
        <source>not recorded</source>
        <translation>sin anotar</translation>
    </message>
    <message>
        <source>left, affected</source>
        <translation>izquierdo, afectado</translation>
    </message>
    <message>
        <source>right, affected</source>
        <translation>derecho, afectado</translation>
    </message>
    <message>
        <source>Help</source>
        <translation>Ayuda</translation>
    </message>
    <message>
        <source>If any of these apply, do not measure. Get help now:</source>
        <translation>Si le ocurre algo de esto, no se mida. Pida ayuda ahora:</translation>
    </message>
    <message>
        <source>If any of these apply, see a clinician within a few days, before you measure:</source>
        <translation>Si le ocurre algo de esto, consulte con un profesional sanitario en unos días, antes de medirse:</translation>
    </message>
    <message>
        <source>If any of these apply, ask your clinician before you measure:</source>
        <translation>Si le ocurre algo de esto, pregunte a su profesional sanitario antes de medirse:</translation>
    </message>
    <message>
        <source>Save as a file...</source>
        <translation>Guardar como archivo...</translation>
    </message>
    <message>
        <source>Print...</source>
        <translation>Imprimir...</translation>
    </message>
    <message>
        <source>Options</source>
        <translation>Opciones</translation>
    </message>
    <message>
        <source>Reading view</source>
        <translation>Vista de lectura</translation>
    </message>
    <message>
        <source>As printed</source>
        <translation>Como se imprime</translation>
    </message>
    <message>
        <source>Report for a clinic visit: {name}</source>
        <translation>Informe para la consulta: {name}</translation>
    </message>
    <message>
        <source>The report is being prepared.</source>
        <translation>Se está preparando el informe.</translation>
    </message>
    <message>
        <source>Page {number} of {count}</source>
        <translation>Página {number} de {count}</translation>
    </message>
    <message>
        <source>Not saved</source>
        <translation>Sin guardar</translation>
    </message>
    <message>
        <source>no clear difference between the sides ({value}, at most {most})</source>
        <translation>sin diferencia clara entre los lados ({value}, como mucho {most})</translation>
    </message>
    <message>
        <source>{side} arm: {value} less than the other ({range})</source>
        <translation>{side}: {value} menos que el otro lado ({range})</translation>
    </message>
    <message>
        <source>No reading</source>
        <translation>Sin lectura</translation>
    </message>
    <message>
        <source>levels {low} to {high}</source>
        <translation>niveles {low} a {high}</translation>
    </message>
    <message>
        <source>Earlier today: {words}</source>
        <translation>Hoy, antes: {words}</translation>
    </message>
    <message>
        <source>Last time, {day}: {words}</source>
        <translation>La vez anterior, {day}: {words}</translation>
    </message>
    <message>
        <source>Ranges in brackets are 95 % ranges.</source>
        <translation>Los intervalos entre paréntesis son intervalos del 95 %.</translation>
    </message>
    <message>
        <source>{side} {words}</source>
        <translation>{side} {words}</translation>
    </message>
    <message>
        <source>{side} not measured: {reason}</source>
        <translation>{side} sin medición: {reason}</translation>
    </message>
    <message>
        <source>{count} trials counted</source>
        <translation>cuentan {count} intentos</translation>
    </message>
    <message>
        <source>1 trial counted</source>
        <translation>cuenta 1 intento</translation>
    </message>
    <message>
        <source>By hand: {values}</source>
        <translation>A mano: {values}</translation>
    </message>
    <message>
        <source>Choose clips</source>
        <translation>Elegir grabaciones</translation>
    </message>
    <message>
        <source>Choose a folder</source>
        <translation>Elegir carpeta</translation>
    </message>
    <message>
        <source>Choose a manifest</source>
        <translation>Elegir lista CSV</translation>
    </message>
    <message>
        <source>Drop clips or a folder here</source>
        <translation>Suelte aquí grabaciones o una carpeta</translation>
    </message>
    <message>
        <source>For each clip: a reading with its 95 % range,
or why there is none.</source>
        <translation>De cada una: lectura con su intervalo del 95&#xa0;%,
o por qué no la hay.</translation>
    </message>
    <message>
        <source>Opened before</source>
        <translation>Abiertas antes</translation>
    </message>
    <message>
        <source>Manifest: a CSV table of clips, movements and sides.</source>
        <translation>Lista en CSV: grabaciones, movimientos y lados.</translation>
    </message>
    <message>
        <source>Recorded clips</source>
        <translation>Grabaciones</translation>
    </message>
    <message>
        <source>Open {name}</source>
        <translation>Abrir {name}</translation>
    </message>
    <message>
        <source>A manifest is a CSV table with the columns clip, movement, side, and optionally view, reference, person. Clips stay where they are.</source>
        <translation>La lista es una tabla CSV con las columnas clip, movement y side, y opcionalmente view, reference y person. Las grabaciones se quedan donde están.</translation>
    </message>
    <message>
        <source>picture of the clip</source>
        <translation>imagen de la grabación</translation>
    </message>
    <message>
        <source>First: the {side} arm</source>
        <translation>Primero: el brazo {side}</translation>
    </message>
    <message>
        <source>s</source>
        <translation>s</translation>
    </message>
    <message>
        <source>second</source>
        <translation>segundo</translation>
    </message>
    <message>
        <source>seconds</source>
        <translation>segundos</translation>
    </message>
    <message>
        <source>hold, {count} s left</source>
        <translation>mantener, quedan {count} s</translation>
    </message>
    <message>
        <source>{exercise}: pain reached, 0 to 10</source>
        <translation>{exercise}: dolor alcanzado, de 0 a 10</translation>
    </message>
    <message>
        <source>{exercise}: compared with the last time</source>
        <translation>{exercise}: en comparación con la última vez</translation>
    </message>
    <message>
        <source>{exercise}: pain {pain} of 10</source>
        <translation>{exercise}: dolor {pain} de 10</translation>
    </message>
    <message>
        <source>Change: {exercise}</source>
        <translation>Cambiar: {exercise}</translation>
    </message>
    <message>
        <source>Compared with last time</source>
        <translation>Frente a la última vez</translation>
    </message>
    <message>
        <source>You said pain {pain} of 10.</source>
        <translation>Usted dijo dolor {pain} de 10.</translation>
    </message>
    <message>
        <source>Skip</source>
        <translation>Omitir</translation>
    </message>
    <message>
        <source>You can skip this.</source>
        <translation>Puede omitirlo.</translation>
    </message>
    <message>
        <source>Remind me while Thawline is open</source>
        <translation>Recordármelo mientras Thawline esté abierto</translation>
    </message>
    <message>
        <source>times of the reminders, such as 08:00, 19:00</source>
        <translation>horas de los recordatorios, por ejemplo 08:00, 19:00</translation>
    </message>
    <message>
        <source>such as 08:00, 19:00</source>
        <translation>por ejemplo 08:00, 19:00</translation>
    </message>
    <message>
        <source>Enter times as 08:00, 19:00.</source>
        <translation>Escriba las horas así: 08:00, 19:00.</translation>
    </message>
    <message>
        <source>A quiet message at these times, and nothing more.</source>
        <translation>Un mensaje discreto a esas horas, y nada más.</translation>
    </message>
    <message>
        <source>drawing: {exercise}</source>
        <translation>dibujo: {exercise}</translation>
    </message>
    <message>
        <source>Your clinician chose these exercises. Thawline added nothing. If you have questions, ask your clinician.</source>
        <translation>Su profesional sanitario eligió estos ejercicios. Thawline no ha añadido nada. Consúltele sus dudas.</translation>
    </message>
    <message>
        <source>Chosen by: {who}.</source>
        <translation>Elegido por: {who}.</translation>
    </message>
    <message>
        <source>From {day}.</source>
        <translation>Desde el {day}.</translation>
    </message>
    <message>
        <source>Review: {day}.</source>
        <translation>Revisión: {day}.</translation>
    </message>
    <message>
        <source>Drawings from the front and from the side are as in a mirror.</source>
        <translation>Los dibujos de frente y de lado se ven como en un espejo.</translation>
    </message>
    <message>
        <source>Move slowly, and stop before it becomes painful.</source>
        <translation>Muévase despacio y pare antes de que duela.</translation>
    </message>
    <message>
        <source>Stop when pain reaches {limit} of 10, or before.</source>
        <translation>Pare cuando el dolor llegue a {limit} de 10, o antes.</translation>
    </message>
    <message>
        <source>Stop and call the emergency number</source>
        <translation>Pare y llame al número de emergencias</translation>
    </message>
    <message>
        <source>Chest pain or pressure, or pain spreading to the jaw, neck, back or arm; breathlessness; a drooping face, slurred speech, sudden weakness or numbness; an arm that is cold, pale, blue or suddenly swollen; a hot, red joint or a fever; a shoulder out of shape after an injury.</source>
        <translation>Dolor o presión en el pecho, o dolor que se extiende a la mandíbula, el cuello, la espalda o el brazo; falta de aire; cara caída, habla confusa, debilidad o entumecimiento repentinos; un brazo frío, pálido, azulado o hinchado de repente; una articulación caliente y roja, o fiebre; un hombro deformado tras una lesión.</translation>
    </message>
    <message>
        <source>Stop and see your clinician within a few days</source>
        <translation>Pare y acuda a su profesional sanitario en los próximos días</translation>
    </message>
    <message>
        <source>Constant pain that no rest eases, day and night; weakness or numbness that gets worse; an arm that you cannot lift since a fall; a new lump, or weight loss that you cannot explain; a swollen or discoloured hand.</source>
        <translation>Dolor constante, de día y de noche, que no se alivia con el reposo; debilidad o entumecimiento que va a más; un brazo que no puede levantar desde una caída; un bulto nuevo o una pérdida de peso sin explicación; una mano hinchada o que ha cambiado de color.</translation>
    </message>
    <message>
        <source>&amp;Menu</source>
        <translation>&amp;Menú</translation>
    </message>
    <message>
        <source>Menu</source>
        <translation>Menú</translation>
    </message>
    <message>
        <source>Medicine</source>
        <translation>Medicación</translation>
    </message>
    <message>
        <source>Treatment</source>
        <translation>Tratamiento</translation>
    </message>
    <message>
        <source>Course and care</source>
        <translation>Evolución y atención</translation>
    </message>
    <message>
        <source>Other changes</source>
        <translation>Otros cambios</translation>
    </message>
    <message>
        <source>hold {percent} % complete</source>
        <translation>pausa hecha al {percent} %</translation>
    </message>
    <message>
        <source>{time}: the time you chose for your exercises.</source>
        <translation>{time}: la hora que eligió para sus ejercicios.</translation>
    </message>
    <message>
        <source>Not measured today</source>
        <translation>Hoy no medido</translation>
    </message>
    <message>
        <source>Measure again</source>
        <translation>Medir otra vez</translation>
    </message>
    <message>
        <source>Measure again: {task}</source>
        <translation>Medir otra vez: {task}</translation>
    </message>
    <message>
        <source>Measured more than once today. This page shows the latest reading of each side; charts and the report use the median of the day&apos;s readings.</source>
        <translation>Hoy se ha medido más de una vez. Esta página muestra la lectura más reciente de cada lado; los gráficos y el informe usan la mediana de las lecturas del día.</translation>
    </message>
    <message>
        <source>Measure your shoulder at home</source>
        <translation>Mida su hombro en casa</translation>
    </message>
    <message>
        <source>Choose a shoulder first</source>
        <translation>Elija el hombro</translation>
    </message>
    <message>
        <source>The language changes when the current measurement or reading has ended.</source>
        <translation>El idioma cambiará cuando termine la medición o la lectura en curso.</translation>
    </message>
    <message>
        <source>The language changes when the exercise programme is saved or left.</source>
        <translation>El idioma cambiará cuando usted guarde el programa de ejercicios o salga de él.</translation>
    </message>
    <message>
        <source>Save the exercise sheet</source>
        <translation>Guardar la hoja de ejercicios</translation>
    </message>
    <message>
        <source>Nothing is saved</source>
        <translation>No se guarda nada</translation>
    </message>
    <message>
        <source>Choose a name. It need not be a real one:</source>
        <translation>Elija un nombre. No tiene que ser real:</translation>
    </message>
    <message>
        <source>What stopped the movements</source>
        <translation>Qué detuvo los movimientos</translation>
    </message>
    <message>
        <source>What stopped the movements, month by month</source>
        <translation>Qué detuvo los movimientos, mes a mes</translation>
    </message>
    <message>
        <source>Could not be read</source>
        <translation>No se pudo leer</translation>
    </message>
    <message>
        <source>from 1 trial</source>
        <translation>de 1 intento</translation>
    </message>
    <message>
        <source>{number} of {total} trials counted</source>
        <translation>{number} de {total} intentos</translation>
    </message>
    <message>
        <source>Then press Try again.</source>
        <translation>Después pulse Probar otra vez.</translation>
    </message>
    <message>
        <source>Open the privacy settings of this computer.</source>
        <translation>Abra los ajustes de privacidad de este ordenador.</translation>
    </message>
    <message>
        <source>Go to Camera, and allow it for Thawline.</source>
        <translation>Vaya a Cámara y permítala para Thawline.</translation>
    </message>
    <message>
        <source>From above</source>
        <translation>Desde arriba</translation>
    </message>
    <message>
        <source>As in a mirror</source>
        <translation>En el espejo</translation>
    </message>
    <message>
        <source>In the picture</source>
        <translation>En la imagen</translation>
    </message>
    <message>
        <source>✗ not counted</source>
        <translation>✗ no cuenta</translation>
    </message>
    <message>
        <source>✓ counted</source>
        <translation>✓ cuenta</translation>
    </message>
    <message>
        <source>Paused</source>
        <translation>En pausa</translation>
    </message>
    <message>
        <source>I have already done some</source>
        <translation>Ya he hecho algunos</translation>
    </message>
    <message>
        <source>All {count} exercises</source>
        <translation>Los {count} ejercicios</translation>
    </message>
    <message>
        <source>Not done today.</source>
        <translation>No hecho hoy.</translation>
    </message>
    <message>
        <source>drawing: changes of less than {amount} may be chance</source>
        <translation>dibujo: los cambios de menos de {amount} pueden ser casualidad</translation>
    </message>
    <message>
        <source>drawing: small changes may be chance</source>
        <translation>dibujo: los cambios pequeños pueden ser casualidad</translation>
    </message>
    <message>
        <source>likely real</source>
        <translation>cambio real</translation>
    </message>
    <message>
        <source>may be chance</source>
        <translation>puede ser casual</translation>
    </message>
    <message>
        <source>no change</source>
        <translation>sin cambio</translation>
    </message>
    <message>
        <source>Day of recording</source>
        <translation>Día de la grabación</translation>
    </message>
    <message>
        <source>This clip is already saved for {person}.</source>
        <translation>Esta grabación ya está guardada para {person}.</translation>
    </message>
    <message>
        <source>On which day was it recorded?</source>
        <translation>¿Qué día se grabó?</translation>
    </message>
    <message>
        <source>All clips</source>
        <translation>Todas las grabaciones</translation>
    </message>
    <message>
        <source>Movement or side missing</source>
        <translation>Falta movimiento o lado</translation>
    </message>
    <message>
        <source>What needs you first</source>
        <translation>Primero lo pendiente</translation>
    </message>
    <message>
        <source>As opened</source>
        <translation>Como se abrieron</translation>
    </message>
    <message>
        <source>By name</source>
        <translation>Por nombre</translation>
    </message>
    <message>
        <source>By movement</source>
        <translation>Por movimiento</translation>
    </message>
    <message>
        <source>By result</source>
        <translation>Por resultado</translation>
    </message>
    <message>
        <source>By notes</source>
        <translation>Por notas</translation>
    </message>
    <message>
        <source>plot of the differences: {movement}</source>
        <translation>gráfico de las diferencias: {movement}</translation>
    </message>
    <message>
        <source>Camera − goniometer</source>
        <translation>Cámara − goniómetro</translation>
    </message>
    <message>
        <source>trend</source>
        <translation>tendencia</translation>
    </message>
    <message>
        <source>Mean of both</source>
        <translation>Media de ambos</translation>
    </message>
    <message>
        <source>Upper limit {value}</source>
        <translation>Límite superior {value}</translation>
    </message>
    <message>
        <source>Average {value}</source>
        <translation>Promedio {value}</translation>
    </message>
    <message>
        <source>Lower limit {value}</source>
        <translation>Límite inferior {value}</translation>
    </message>
    <message>
        <source>Pain corrected on {day}: {changes}.</source>
        <translation>Dolor corregido el {day}: {changes}.</translation>
    </message>
    <message>
        <source>{what}: {now} instead of {before}</source>
        <translation>{what}: {now} en lugar de {before}</translation>
    </message>
    <message>
        <source>no answer</source>
        <translation>ninguna respuesta</translation>
    </message>
    <message>
        <source>This entry is deleted: {entry}. You can undo this until Thawline is closed.</source>
        <translation>Se ha eliminado esta anotación: {entry}. Puede deshacerlo hasta que se cierre Thawline.</translation>
    </message>
    <message>
        <source>These entries are deleted: {entries}. You can undo this until Thawline is closed.</source>
        <translation>Se han eliminado estas anotaciones: {entries}. Puede deshacerlo hasta que se cierre Thawline.</translation>
    </message>
</context>
<context>
    <name>plot</name>
    <message>
        <source>turn</source>
        <translation>giro</translation>
    </message>
</context>
</TS>
